package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudentTest {
  /** JCGM 100:2008, table G.2, 95 %, to both sides. */
  @ParameterizedTest
  @CsvSource({"1, 12.71", "5, 2.57", "16, 2.12", "50, 2.01", "100, 1.984", "Infinity, 1.960"})
  void quantiles(double degrees, double t) {
    assertThat(Student.quantile(0.975, degrees)).isCloseTo(t, within(0.005));
    assertThat(Student.below(Student.quantile(0.975, degrees), degrees))
        .isCloseTo(0.975, within(1e-9));
  }

  /** Firings that agree to the tick against a rig's allowances have such degrees of freedom. */
  @Test
  void endlessDegreesAreTheNormalDistribution() {
    double under = Math.nextDown(1e6);
    assertThat(Student.quantile(0.95, 1e14)).isCloseTo(Student.quantile(0.95, under), within(3e-6));
    assertThat(Student.below(1.3, 1e14)).isCloseTo(Student.below(1.3, under), within(3e-6));
  }
}
