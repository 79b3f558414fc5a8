package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;

class DialTest {
  @Test
  void aDialComesBackFromItsKey() {
    for (Dial builtIn : Dial.builtIn()) {
      assertThat(builtIn.key()).isEqualTo(builtIn.name());
      assertThat(Dial.ofKey(builtIn.key())).contains(builtIn);
    }
    Dial own = Dial.custom("1/200, 1,1/2,1/5,B").orElseThrow();
    assertThat(own.key()).isEqualTo("1,1/2,1/5,1/200");
    assertThat(Dial.ofKey(own.key())).contains(own);
    // Files of earlier versions do not say what is on it.
    assertThat(Dial.ofKey(Dial.CUSTOM)).isEmpty();
  }

  @Test
  void aDialIsFoundByItsNameAndAnUnknownOneIsNot() {
    assertThat(Dial.names()).doesNotHaveDuplicates();
    for (String name : Dial.names()) {
      assertThat(Dial.find(name).orElseThrow().name()).isEqualTo(name);
    }
    assertThat(Dial.find("sundial")).isEmpty();
  }

  /** What the dials offer is common practice, no source. */
  @Test
  void modernDialsAreExactAndOlderOnesLiteral() {
    assertThat(Dial.find("leaf").orElseThrow().top()).hasToString("1/500");
    assertThat(Dial.find("curtain").orElseThrow().top()).hasToString("1/1000");
    assertThat(Dial.find("leaf").orElseThrow().reference()).isEqualTo(Reference.EXACT);
    Dial older = Dial.find("older-leaf").orElseThrow();
    assertThat(older.reference()).isEqualTo(Reference.LITERAL);
    assertThat(older.speeds())
        .map(MarkedSpeed::label)
        .containsExactly("1", "1/2", "1/5", "1/10", "1/25", "1/50", "1/100", "1/250");
  }

  @Test
  void aListIsSortedAndUntimedSettingsAreLeftOut() {
    Dial dial = Dial.custom("B, 1/60, 1/125,T, 1/30, 0.5, 1/2").orElseThrow();
    assertThat(dial.speeds())
        .map(MarkedSpeed::label)
        .containsExactly("1/2", "1/30", "1/60", "1/125");
    assertThat(dial.reference()).isEqualTo(Reference.EXACT);
    assertThat(dial.name()).isEqualTo(Dial.CUSTOM);
  }

  @Test
  void oneOldMarkingMakesAListLiteral() {
    assertThat(Dial.custom("1/25,1/60,1/125").orElseThrow().reference())
        .isEqualTo(Reference.LITERAL);
  }

  @Test
  void aListThatNamesNoTimesGivesNoDial() {
    assertThat(Dial.custom("")).isEmpty();
    assertThat(Dial.custom("B,T")).isEmpty();
    assertThat(Dial.custom("1/60,quick")).isEmpty();
  }

  @Test
  void neighbours() {
    Dial dial = Dial.find("leaf").orElseThrow();
    MarkedSpeed sixtieth = dial.speed("1/60").orElseThrow();
    assertThat(dial.slower(sixtieth)).contains(MarkedSpeed.parse("1/30"));
    assertThat(dial.faster(sixtieth)).contains(MarkedSpeed.parse("1/125"));
    assertThat(dial.faster(dial.top())).isEmpty();
    assertThat(dial.slower(MarkedSpeed.parse("1"))).isEmpty();
    assertThat(dial.slower(MarkedSpeed.parse("1/25"))).isEmpty();
    assertThat(dial.speed("1/50")).isEmpty();
  }

  @Test
  void speedsOutOfOrderAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new Dial(
                    "mixed",
                    List.of(MarkedSpeed.parse("1/60"), MarkedSpeed.parse("1/30")),
                    Reference.EXACT))
        .withMessageContaining("1/30");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Dial("empty", List.of(), Reference.EXACT));
  }
}
