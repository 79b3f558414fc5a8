package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class EquivalenceTest {
  /**
   * Documentation of the R package TOSTER, function TOSTtwo.raw: 95 with mean 5.25, sd 0.95 against
   * 89 with mean 5.22, sd 0.83, equal variances, margins -+0.43 of the pooled sd of 0.894: t(182) =
   * -2.69, p = 0.004.
   */
  @Test
  void meetsThePublishedExample() {
    Sample control = withMeanAndSd(95, 5.25, 0.95);
    Sample other = withMeanAndSd(89, 5.22, 0.83);
    MeanShift shift = MeanShift.pooled(other, control, 0.9).get();

    double margin = 0.43 * 0.894;
    Equivalence equivalence = Equivalence.of(shift, -margin, margin);

    assertThat(shift.degreesOfFreedom()).isEqualTo(182);
    assertThat((shift.shift() - margin) / shift.standardError()).isCloseTo(-2.69, within(5e-3));
    assertThat(equivalence.p()).isCloseTo(0.004, within(5e-4));
    assertThat(equivalence.pNotAbove()).isEqualTo(equivalence.p());
    assertThat(equivalence.shown(0.05)).isTrue();
  }

  /** Schuirmann (1987): the same decision as the interval of level 1 - 2 alpha. */
  @Test
  void agreesWithTheInterval() {
    Sample before = Sample.of(0.02, -0.05, 0.04, 0.01, -0.03);
    Sample after = Sample.of(0.06, 0.01, 0.03, -0.02, 0.05);
    MeanShift shift = MeanShift.welch(before, after, 0.9).get();
    double high = shift.interval().high();

    assertThat(Equivalence.of(shift, -1, high + 1e-6).shown(0.05)).isTrue();
    assertThat(Equivalence.of(shift, -1, high - 1e-6).shown(0.05)).isFalse();
    assertThat(Equivalence.of(shift, -1, high).p()).isCloseTo(0.05, within(1e-9));
  }

  @Test
  void marginsMustNotCross() {
    MeanShift shift = MeanShift.welch(Sample.of(1, 2), Sample.of(1, 2), 0.9).get();
    assertThatThrownBy(() -> Equivalence.of(shift, 0.1, -0.1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static Sample withMeanAndSd(int n, double mean, double sd) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = i;
    }
    double ownMean = Sample.of(values).mean().get();
    double ownSd = Sample.of(values).sd().get();
    for (int i = 0; i < n; i++) {
      values[i] = mean + (values[i] - ownMean) / ownSd * sd;
    }
    return Sample.of(values);
  }
}
