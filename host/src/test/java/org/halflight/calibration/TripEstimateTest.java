package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.calibration.TripEstimate.Way;
import org.halflight.profile.ComparatorTrips;
import org.junit.jupiter.api.Test;

class TripEstimateTest {
  @Test
  void aSweepThroughSteadyLightTellsOffsetAndHysteresis() {
    // Switches on at threshold + 8 + 3 and off at threshold + 8 - 3; the light stands at 400.
    ComparatorTrips found = TripEstimate.of(new Way(395, 400), new Way(389, 400));
    assertThat(found.risingCounts()).isEqualTo(11);
    assertThat(found.fallingCounts()).isEqualTo(5);
    assertThat(found.offsetCounts()).isEqualTo(8);
    assertThat(found.hysteresisCounts()).isEqualTo(6);
  }

  @Test
  void eachWayIsHeldAgainstTheLightBesideIt() {
    // Ripple of 2 counts either way: met low on the way up, high on the way down.
    ComparatorTrips found = TripEstimate.of(new Way(393, 398), new Way(391, 402));
    assertThat(found.offsetCounts()).isEqualTo(8);
    assertThat(found.hysteresisCounts()).isEqualTo(6);
  }

  /** Cut off at zero, the mean over sweeps of a comparator without hysteresis would not be zero. */
  @Test
  void noiseMayMakeAHysteresisBelowZeroAndMeansStayRight() {
    ComparatorTrips one = TripEstimate.of(new Way(399, 400), new Way(401, 400));
    ComparatorTrips other = TripEstimate.of(new Way(401, 400), new Way(399, 400));
    assertThat(one.hysteresisCounts()).isEqualTo(-2);
    assertThat((one.hysteresisCounts() + other.hysteresisCounts()) / 2).isCloseTo(0, within(1e-12));
  }
}
