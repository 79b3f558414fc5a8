package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

class ShareLimitTest {
  /** With none seen the limit is 1 - 0.05^(1/n). */
  @Test
  void noneSeenExcludesLittle() {
    assertThat(ShareLimit.upper(0, 3, 0.95)).isCloseTo(0.632, within(5e-4));
    assertThat(ShareLimit.upper(0, 5, 0.95)).isCloseTo(0.451, within(5e-4));
    assertThat(ShareLimit.upper(0, 10, 0.95)).isCloseTo(0.259, within(5e-4));
  }

  @Test
  void atTheLimitNoMoreAreSeenInOneOfTwenty() {
    for (int of : new int[] {1, 2, 5, 7, 30}) {
      for (int seen = 0; seen < of; seen++) {
        double limit = ShareLimit.upper(seen, of, 0.95);
        assertThat(new BinomialDistribution(null, of, limit).cumulativeProbability(seen))
            .as("%d of %d", seen, of)
            .isCloseTo(0.05, within(1e-6));
      }
      assertThat(ShareLimit.upper(of, of, 0.95)).isEqualTo(1);
    }
  }

  @Test
  void whatIsNoShareIsRefused() {
    assertThatThrownBy(() -> ShareLimit.upper(0, 0, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ShareLimit.upper(4, 3, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ShareLimit.upper(-1, 3, 0.95))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> ShareLimit.upper(1, 3, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
