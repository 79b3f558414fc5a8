package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class QuantileRuleTest {
  /** NIST/SEMATECH e-Handbook 7.2.6.2, 90th percentile of 12 wafers: R6, R7, R8. */
  @Test
  void meetsTheHandbook() {
    Sample wafers = Published.column("nist_percentile_wafers.csv", "y");
    assertThat(QuantileRule.WEIBULL_R6.of(wafers, 0.9).get()).isCloseTo(95.1981, within(6e-5));
    assertThat(QuantileRule.LINEAR_R7.of(wafers, 0.9).get()).isCloseTo(95.1957, within(6e-5));
    assertThat(QuantileRule.MEDIAN_UNBIASED_R8.of(wafers, 0.9).get())
        .isCloseTo(95.1972, within(6e-5));
  }

  @Test
  void endsAndMiddleAreTheSameForAll() {
    Sample sample = Sample.of(4, 1, 3, 2);
    for (QuantileRule rule : QuantileRule.values()) {
      assertThat(rule.of(sample, 0).get()).isEqualTo(1);
      assertThat(rule.of(sample, 1).get()).isEqualTo(4);
      assertThat(rule.of(sample, 0.5).get()).isCloseTo(2.5, within(1e-12));
      assertThat(rule.of(Sample.of(7), 0.3).get()).isEqualTo(7);
      assertThat(rule.of(Sample.of(), 0.5)).isEqualTo(new NotEnoughFirings<Double>(0, 1));
    }
  }
}
