package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collections;
import java.util.ResourceBundle;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;

class WordsTest {
  @Test
  void placesAreFilledAndAPartThatHoldsAPlaceIsLeftAlone() {
    assertThat(Words.say("rig.nameOn", "{1}", "{0}")).isEqualTo("{1} on {0}");
    assertThat(Words.of("phase", Phase.AS_FOUND)).isEqualTo("As found");
  }

  @Test
  void oneHasItsOwnSentence() {
    assertThat(Words.count("bounce.cocking", 0, 0)).isEqualTo("Light came 0 times while cocking.");
    assertThat(Words.count("bounce.cocking", 1, 1)).isEqualTo("Light came once while cocking.");
    assertThat(Words.count("bounce.cocking", 2, 2)).isEqualTo("Light came 2 times while cocking.");
  }

  @Test
  void anUnknownSentenceIsAMistake() {
    assertThat(Words.has("no.such")).isFalse();
    assertThatThrownBy(() -> Words.say("no.such"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no.such");
  }

  @Test
  void whatIsSaidOfManyIsSaidOfOneToo() {
    ResourceBundle bundle = ResourceBundle.getBundle("org.halflight.words.sentences");
    assertThat(
            Collections.list(bundle.getKeys()).stream()
                .filter(key -> key.endsWith(".many"))
                .map(key -> key.replaceFirst("many$", "one")))
        .isNotEmpty()
        .allMatch(bundle::containsKey);
  }
}
