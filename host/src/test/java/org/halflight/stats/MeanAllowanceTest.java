package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

class MeanAllowanceTest {
  /**
   * The variance of a mean of firings that are alike by 0.3 one after the other, by adding up their
   * correlations, and of a run that lies off by half a standard deviation, is no more than what is
   * allowed.
   */
  @Test
  void theUsualOneCoversWhatItSaysItCovers() {
    for (int n = 2; n <= 30; n++) {
      double sum = n;
      for (int apart = 1; apart < n; apart++) {
        sum += 2 * (n - apart) * Math.pow(0.3, apart);
      }
      assertThat(MeanAllowance.USUAL.ofMean(n))
          .as("%d firings", n)
          .isGreaterThan(sum / (n * (double) n) + 0.25);
    }
    assertThat(MeanAllowance.USUAL.ofMean(5)).isCloseTo(0.68, within(1e-12));
    assertThat(MeanAllowance.INDEPENDENT.ofMean(4)).isEqualTo(0.25);
    assertThat(MeanAllowance.USUAL.degrees(5, 8)).isCloseTo(8, within(1e-12));
  }

  @Test
  void repeatedRunsShowWhatTheyDifferBy(@Seed(4) long seed) {
    Random random = new Random(seed);
    double own = 0;
    double whole = 0;
    int tries = 400;
    for (int i = 0; i < tries; i++) {
      MeanAllowance seen = MeanAllowance.ofRepeatedRuns(runs(random, 6, 8, 5, 0.3, 0.4)).get();
      own += seen.own(5) / tries;
      whole += seen.ofRun() / tries;
      assertThat(seen.ofRunDegrees()).isEqualTo(5);
      assertThat(seen.perFiringDegrees()).isEqualTo(35);
    }
    // Of each speed 0.2 + 0.3 squared; of all together 0.4 squared and an eighth of that.
    assertThat(own + whole).as("seed %d", seed).isCloseTo(0.2 + 0.09 + 0.16, within(0.05));
    assertThat(whole).as("seed %d", seed).isCloseTo(0.16 + 0.29 / 8, within(0.04));
  }

  private static List<List<Sample>> runs(
      Random random, int runs, int speeds, int firings, double each, double whole) {
    List<List<Sample>> all = new ArrayList<>();
    for (int run = 0; run < runs; run++) {
      double off = whole * random.nextGaussian();
      List<Sample> samples = new ArrayList<>();
      for (int speed = 0; speed < speeds; speed++) {
        double own = off + each * random.nextGaussian();
        double[] errors = new double[firings];
        for (int i = 0; i < firings; i++) {
          errors[i] = 0.04 * (speed + own + random.nextGaussian());
        }
        samples.add(Sample.of(errors));
      }
      all.add(samples);
    }
    return all;
  }

  @Test
  void longerRunsThanWereSeenAreNoSurer() {
    MeanAllowance seen = MeanAllowance.ofRepeatedRuns(runs(new Random(1), 5, 4, 5, 0, 0)).get();
    assertThat(seen.own(10)).isEqualTo(seen.own(5));
    assertThat(seen.own(3)).isGreaterThan(seen.own(5));
    // Few runs tell little: fewer degrees of freedom than the scatter has.
    assertThat(seen.degrees(5, 40)).isLessThan(20);
  }

  @Test
  void fewRunsOrSpeedsTakeNoAllowancesPlace() {
    Random random = new Random(1);
    assertThat(MeanAllowance.ofRepeatedRuns(runs(random, 3, 8, 5, 0, 0))).isEmpty();
    assertThat(MeanAllowance.ofRepeatedRuns(runs(random, 6, 2, 5, 0, 0))).isEmpty();
    assertThat(MeanAllowance.ofRepeatedRuns(List.of())).isEmpty();
    Sample alike = Sample.of(0.1, 0.1);
    assertThat(
            MeanAllowance.ofRepeatedRuns(
                java.util.Collections.nCopies(5, List.of(alike, alike, alike))))
        .isEmpty();
  }

  @Test
  void refusesWhatMakesNoSense() {
    assertThatThrownBy(() -> new MeanAllowance(0, 0.3)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new MeanAllowance(1, -1)).isInstanceOf(IllegalArgumentException.class);
  }
}
