package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class HolmTest {
  /** Values of R's p.adjust as in the tests of the Julia package PValueAdjust. */
  @Test
  void meetsPublishedValues() {
    assertThat(Holm.adjusted(0.05, 0.03, 0.01, 0.5))
        .containsExactly(new double[] {0.1, 0.09, 0.04, 0.5}, within(1e-12));
    assertThat(Holm.adjusted(1, 0.5, 0.1, 0.001, 0.0001, 0.002))
        .containsExactly(new double[] {1, 1, 0.3, 0.005, 0.0006, 0.008}, within(1e-12));
    assertThat(Holm.adjusted(0.05, 0.05, 0.05))
        .containsExactly(new double[] {0.15, 0.15, 0.15}, within(1e-12));
    assertThat(Holm.adjusted()).isEmpty();
  }

  @Test
  void chancesLieFromZeroToOne() {
    assertThatThrownBy(() -> Holm.adjusted(0.1, 1.1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Holm.adjusted(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
