package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoncentralTTest {
  /** Computed with 30-digit arithmetic (mpmath); SciPy 1.17.1 gives the same to 1e-14. */
  @ParameterizedTest
  @CsvSource({
    "3,   1,    2,   0.7436298684076653",
    "10,  -2,   0.5, 0.993299615520874",
    "5,   4,    12,  0.9849269380596634",
    "19,  6.2,  8,   0.8508163758873227",
    "99,  16.4, 18,  0.8308741617472633",
    "2.5, 1.5,  3,   0.7692600113102789",
  })
  void meetsComputedValues(double degrees, double delta, double t, double chance) {
    NoncentralT distribution = new NoncentralT(degrees, delta);
    assertThat(distribution.cumulative(t)).isCloseTo(chance, within(1e-11));
    assertThat(distribution.quantile(chance)).isCloseTo(t, within(1e-8));
  }

  @Test
  void isStudentsWithoutShift() {
    for (double degrees : new double[] {1, 2, 4, 30, 500}) {
      for (double t : new double[] {-6, -1, 0, 0.3, 2, 40}) {
        assertThat(new NoncentralT(degrees, 0).cumulative(t))
            .as("%s degrees, t %s", degrees, t)
            .isCloseTo(new TDistribution(degrees).cumulativeProbability(t), within(1e-10));
      }
    }
  }

  @Test
  void mirrorsAndRises() {
    NoncentralT up = new NoncentralT(4, 2.5);
    NoncentralT down = new NoncentralT(4, -2.5);
    double last = 0;
    for (double t = -5; t < 50; t += 0.5) {
      assertThat(up.cumulative(t)).isCloseTo(1 - down.cumulative(-t), within(1e-10));
      assertThat(up.cumulative(t)).isGreaterThanOrEqualTo(last - 1e-13);
      last = up.cumulative(t);
    }
  }
}
