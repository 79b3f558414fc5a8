package org.halflight.stored;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class StoredWordsTest {
  /** Two enums side by side, each with a switch: neither may wait for the other. */
  private enum Shape {
    ROUND;

    static final StoredWords<Shape> WORDS =
        StoredWords.of(
            Shape.class,
            shape ->
                switch (shape) {
                  case ROUND -> "round";
                });
  }

  private enum Colour {
    RED,
    LIGHT_BLUE;

    static final StoredWords<Colour> WORDS =
        StoredWords.of(
            Colour.class,
            colour ->
                switch (colour) {
                  case RED -> "red";
                  case LIGHT_BLUE -> "light-blue";
                });
  }

  @Test
  void everyConstantComesBackFromItsWord() {
    for (Colour colour : Colour.values()) {
      assertThat(Colour.WORDS.find(Colour.WORDS.word(colour))).contains(colour);
      assertThat(Colour.WORDS.parse(Colour.WORDS.word(colour))).isEqualTo(colour);
    }
    assertThat(Colour.WORDS.all()).containsExactly("red", "light-blue");
  }

  @Test
  void enumsSideBySideHaveTheirWords() {
    assertThat(Shape.WORDS.word(Shape.ROUND)).isEqualTo("round");
    assertThat(Colour.WORDS.word(Colour.RED)).isEqualTo("red");
  }

  @Test
  void anUnknownWordIsSaidWithThoseThatThereAre() {
    assertThat(Colour.WORDS.find("Red")).isEmpty();
    assertThatThrownBy(() -> Colour.WORDS.parse("green"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("'green' is none of red, light-blue");
  }

  @Test
  void twoConstantsWithOneWordAreRefused() {
    assertThatThrownBy(() -> StoredWords.of(Colour.class, colour -> "red").all())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("Colour has no word of its own: 'red'");
    assertThatThrownBy(() -> StoredWords.of(Colour.class, colour -> " ").all())
        .isInstanceOf(IllegalArgumentException.class);
  }
}
