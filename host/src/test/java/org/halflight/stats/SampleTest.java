package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleTest {
  /**
   * Certified values of the NIST Statistical Reference Datasets, univariate. The mean is asked for
   * to 1e-13, the standard deviation to 1e-12; NumAcc3 to 1e-9, because its decimals are not exact
   * in binary and even a perfect method gives 0.10000000003492503.
   */
  @ParameterizedTest
  @CsvSource({
    "strd_mavro.csv,    50,   2.00185600000000, 0.000429123454003053, 1e-12",
    "strd_michelso.csv, 100,  299.852400000000, 0.0790105478190518,   1e-12",
    "strd_numacc1.csv,  3,    10000002,         1,                    1e-12",
    "strd_numacc2.csv,  1001, 1.2,              0.1,                  1e-12",
    "strd_numacc3.csv,  1001, 1000000.2,        0.1,                  1e-9",
    "strd_pidigits.csv, 5000, 4.53480000000000, 2.86733906028871,     1e-12",
  })
  void meetsCertifiedValues(String file, int n, double mean, double sd, double sdTolerance) {
    Sample sample = Published.column(file, "y");

    assertThat(sample.n()).isEqualTo(n);
    assertThat(sample.mean().get()).isCloseTo(mean, Percentage.withPercentage(1e-11));
    assertThat(sample.sd().get()).isCloseTo(sd, Percentage.withPercentage(100 * sdTolerance));
  }

  @Test
  void medianIsTheMiddleWhateverTheOrder() {
    assertThat(Sample.of(3, 1, 2).median().get()).isEqualTo(2);
    assertThat(Sample.of(4, 1, 3, 2).median().get()).isEqualTo(2.5);
  }

  @Test
  void robustSpreadIgnoresAWildFiring() {
    // By hand: median 3, distances 2 1 0 1 97, their median 1.
    assertThat(Sample.of(1, 2, 3, 4, 100).robustSpread().get()).isCloseTo(1.4826, within(1e-15));
    assertThat(Sample.of(1, 2, 3, 4, 100).sd().get()).isGreaterThan(40);
  }

  /** Student's t table: t(0.975, 4) = 2.7764451051978 and t(0.995, 4) = 4.60409487135. */
  @Test
  void meanIntervalFollowsTheTable() {
    Sample sample = Sample.of(-2, -1, 0, 1, 2);
    double standardError = Math.sqrt(2.5) / Math.sqrt(5);

    Interval at95 = sample.meanInterval(0.95).get();
    assertThat(at95.high()).isCloseTo(2.7764451051978 * standardError, within(1e-9));
    assertThat(at95.low()).isCloseTo(-2.7764451051978 * standardError, within(1e-9));
    assertThat(at95.level()).isEqualTo(0.95);
    assertThat(sample.meanInterval(0.99).get().high())
        .isCloseTo(4.60409487135 * standardError, within(1e-9));
  }

  @Test
  void tooFewFiringsAreSaidNotComputed() {
    assertThat(Sample.of().mean()).isEqualTo(new NotEnoughFirings<Double>(0, 1));
    assertThat(Sample.of().median()).isEqualTo(new NotEnoughFirings<Double>(0, 1));
    assertThat(Sample.of(1).mean().get()).isEqualTo(1);
    assertThat(Sample.of(1).sd()).isEqualTo(new NotEnoughFirings<Double>(1, 2));
    assertThat(Sample.of(1).meanInterval(0.95)).isEqualTo(new NotEnoughFirings<Interval>(1, 2));
    assertThat(Sample.of(1, 2).robustSpread()).isEqualTo(new NotEnoughFirings<Double>(2, 3));
    assertThat(Sample.of(1).sd().known()).isEmpty();
  }

  @Test
  void equalFiringsHaveNoScatterButAMean() {
    Sample sample = Sample.of(0.1, 0.1, 0.1);
    assertThat(sample.mean().get()).isEqualTo(0.1);
    assertThat(sample.sd().get()).isZero();
    assertThat(sample.robustSpread().get()).isZero();
  }

  @Test
  void numbersThatAreNoneAreTheCallersMistake() {
    assertThatThrownBy(() -> Sample.of(1, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Sample.of(1, Double.POSITIVE_INFINITY))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Sample.of(1, 2).meanInterval(95))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aSampleDoesNotChangeWithTheArrayItCameFrom() {
    double[] values = {1, 2, 3};
    Sample sample = Sample.of(values);
    values[0] = 99;
    sample.values()[1] = 99;
    assertThat(sample.values()).containsExactly(1, 2, 3);
  }
}
