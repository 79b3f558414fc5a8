package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class WelchPowerTest {
  @Test
  void withManyFiringsItIsThePooledTest() {
    // The pooled test by the noncentral t; see PowerTest for the published values behind it.
    double pooled = ShiftPower.detectableShiftInSds(20, 0.05, 0.8);
    assertThat(WelchPower.USUAL.detectableShiftInSds(20, 0.05, 0.8))
        .isCloseTo(pooled, within(0.04 * pooled));
  }

  @Test
  void withFewFiringsItFindsLess() {
    double pooled = ShiftPower.detectableShiftInSds(3, 0.005, 0.8);
    assertThat(WelchPower.USUAL.detectableShiftInSds(3, 0.005, 0.8)).isGreaterThan(1.3 * pooled);
  }

  @Test
  void theSameSeedGivesTheSameAnswer() {
    WelchPower power = new WelchPower(500, 7);
    assertThat(power.detectableShiftInSds(5, 0.01, 0.8))
        .isEqualTo(power.detectableShiftInSds(5, 0.01, 0.8));
  }

  @Test
  void refusesWhatMakesNoSense() {
    assertThatThrownBy(() -> WelchPower.USUAL.detectableShiftInSds(1, 0.05, 0.8))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> WelchPower.USUAL.detectableShiftInSds(5, 0.05, 0.01))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new WelchPower(0, 1)).isInstanceOf(IllegalArgumentException.class);
  }
}
