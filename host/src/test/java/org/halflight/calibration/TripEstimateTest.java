package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.calibration.TripEstimate.Way;
import org.halflight.fixtures.Seed;
import org.halflight.light.LightFlutter;
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

  /**
   * Noise of one count switches the comparator early on both ways. Looks of a hundredth of a
   * millisecond at steps of a quarter of a count; the truth lies within the expanded uncertainty of
   * the mean of many such sweeps, for looks that are few and many.
   */
  @Test
  void noiseDoesNotMakeTheHysteresisSmall(@Seed(17) long seed) {
    for (int looks : new int[] {100, 1000, 5000}) {
      for (double noise : new double[] {0.3, 1}) {
        java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
        LightFlutter flutter = new LightFlutter(noise, 0);
        double sum = 0;
        ComparatorTrips last = ComparatorTrips.EXACT;
        for (int run = 0; run < 50; run++) {
          // Light 400, offset 2, hysteresis 3.
          int up = tripCode(random, 4 * 380, 1, noise, looks, 400 - 2 + 1.5);
          int down = tripCode(random, 4 * 420, -1, noise, looks, 400 - 2 - 1.5);
          last =
              TripEstimate.of(
                  new Way(up, up / 4.0 - 0.5, 399.5),
                  new Way(down, down / 4.0 - 0.5, 399.5),
                  flutter);
          assertThat(last.offsetCounts())
              .as("seed %s, noise %s, %s looks", seed, noise, looks)
              .isCloseTo(2, within(3 * last.standardUncertaintyCounts()));
          sum += last.hysteresisCounts() / 50;
        }
        assertThat(sum)
            .as("seed %s, noise %s, %s looks", seed, noise, looks)
            .isCloseTo(3, within(4 * last.standardUncertaintyCounts()));
      }
    }
  }

  /** The first code at which a noisy look is past a threshold. */
  private static int tripCode(
      java.util.SplittableRandom random,
      int from,
      int step,
      double noise,
      int looks,
      double trips) {
    for (int code = from; ; code += step) {
      for (int i = 0; i < looks; i++) {
        if (step * (code / 4.0 + noise * random.nextGaussian() - trips) >= 0) {
          return code;
        }
      }
    }
  }

  @Test
  void theFlutterOfTheLightIsFound(@Seed(5) long seed) {
    java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
    int[] sums = new int[100];
    for (int i = 0; i < sums.length; i++) {
      for (int reading = 0; reading < 16; reading++) {
        double seconds = (i + reading / 16.0) * 1e-3;
        sums[i] +=
            (int)
                Math.floor(
                    600.3 + 2 * Math.sin(200 * Math.PI * seconds) + 0.8 * random.nextGaussian());
      }
    }
    LightFlutter found = LightFlutter.of(sums);
    assertThat(found.noiseCounts()).as("seed " + seed).isCloseTo(0.8, within(0.35));
    assertThat(found.rippleCounts()).as("seed " + seed).isCloseTo(2, within(0.3));
    assertThat(LightFlutter.of(new int[50])).isEqualTo(LightFlutter.NONE);
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
