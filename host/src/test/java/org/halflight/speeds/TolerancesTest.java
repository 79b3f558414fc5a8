package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TolerancesTest {
  private static final Dial LEAF = Dial.find("leaf").orElseThrow();
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  @Test
  void nothingChosenIsTradeCustom() {
    Tolerances usual = Tolerances.find("").orElseThrow();
    assertThat(usual).isEqualTo(Tolerances.USUAL);
    assertThat(usual.of(TOP, LEAF)).isEqualTo(Tolerance.HALF);
    assertThat(usual.of(SIXTIETH, LEAF)).isEqualTo(Tolerance.THIRD);
  }

  @Test
  void oneForEverySpeedAndOthersForSome() {
    Tolerances chosen = Tolerances.find("1/3, 1/500=0.75, 1/60 = 10%").orElseThrow();
    assertThat(chosen.of(MarkedSpeed.parse("1/8"), LEAF)).isEqualTo(Tolerance.THIRD);
    assertThat(chosen.of(TOP, LEAF)).isEqualTo(new Tolerance(0.75, 0.75));
    // log2 1.1 and -log2 0.9.
    assertThat(chosen.of(SIXTIETH, LEAF).slowStops()).isCloseTo(0.137504, within(1e-6));
    assertThat(chosen.of(SIXTIETH, LEAF).fastStops()).isCloseTo(0.152003, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "1/3", "0.25", "1/500=0.5", "10%", "0.3, 1/500=+0.5-0.25, 1=2/7", "1/60=33%"})
  void whatIsWrittenDownIsReadTheSame(String text) {
    Tolerances chosen = Tolerances.find(text).orElseThrow();
    assertThat(Tolerances.find(chosen.text())).isEqualTo(Optional.of(chosen));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "x",
        "0",
        "-0.3",
        "0.3,0.4",
        "1/500=",
        "B=0.3",
        "1/60=0.3,1/60=0.4",
        "1/0",
        "100%",
        "0.3,",
        "1/60=0.3=0.4",
        "+0.3"
      })
  void whatIsNoToleranceIsRefused(String text) {
    assertThat(Tolerances.find(text)).isEmpty();
  }
}
