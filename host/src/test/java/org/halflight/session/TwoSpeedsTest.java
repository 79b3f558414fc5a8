package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TwoSpeedsTest {
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1");
  private static final MarkedSpeed FAST = MarkedSpeed.parse("1/15");

  @ParameterizedTest
  @CsvSource({
    "leaf, 1, 1, 1/15",
    "leaf, 1/8, 1/8, 1/15",
    "leaf, 1/15, 1, 1/15",
    "leaf, 1/500, 1, 1/500",
    "older-leaf, 1/2, 1/2, 1/25",
    "simple-older, 1/100, 1/25, 1/100",
    "simple-older, 1/25, 1/25, 1/50"
  })
  void usualPair(String dial, String to, String first, String second) {
    assertThat(TwoSpeeds.with(MarkedSpeed.parse(to), Dial.find(dial).orElseThrow().speeds()))
        .contains(new TwoSpeeds(MarkedSpeed.parse(first), MarkedSpeed.parse(second)));
  }

  @Test
  void dialOfOneSpeedHasNoPair() {
    assertThat(TwoSpeeds.with(SLOW, Dial.custom("1").orElseThrow().speeds())).isEmpty();
  }

  @Test
  void twoFiringsAtOneThenTwoAtTheOther() {
    TwoSpeeds two = new TwoSpeeds(SLOW, FAST);
    assertThat(two.next(SLOW, of(0, 0)::get)).isEqualTo(SLOW);
    assertThat(two.next(SLOW, of(1, 0)::get)).isEqualTo(SLOW);
    assertThat(two.next(SLOW, of(2, 0)::get)).isEqualTo(FAST);
    assertThat(two.next(FAST, of(2, 1)::get)).isEqualTo(FAST);
    assertThat(two.next(FAST, of(2, 2)::get)).isEqualTo(FAST);
    // After the adjustment it begins where the dial is.
    assertThat(two.next(FAST, of(0, 0)::get)).isEqualTo(FAST);
    assertThat(two.next(FAST, of(0, 2)::get)).isEqualTo(SLOW);
    MarkedSpeed third = MarkedSpeed.parse("1/60");
    assertThat(two.next(third, of(0, 0)::get)).isEqualTo(third);
  }

  private static Map<MarkedSpeed, Integer> of(int slow, int fast) {
    return Map.of(SLOW, slow, FAST, fast);
  }
}
