package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.junit.jupiter.api.Test;

class BeyondLimitsTest {
  /** Sign test by hand: 8 of 128 for one of seven, 56 of 1024 for two of ten. */
  @Test
  void asManyAsOneSampleInSixteenHasWhereTheMedianLiesOnTheLimit() {
    assertThat(List.of(3, 4, 5, 6).stream().map(BeyondLimits::most)).containsExactly(3, 4, 5, 6);
    assertThat(List.of(7, 8, 9, 10, 11, 12, 13, 15, 20, 30).stream().map(BeyondLimits::most))
        .containsExactly(1, 1, 1, 2, 2, 2, 3, 4, 6, 10);
    for (int n = BeyondLimits.LEAST; n <= 60; n++) {
      assertThat(chanceOfNoMore(n, BeyondLimits.most(n))).isLessThanOrEqualTo(1.0 / 16);
      assertThat(chanceOfNoMore(n, BeyondLimits.most(n) + 1)).isGreaterThan(1.0 / 16);
    }
  }

  private static double chanceOfNoMore(int n, int most) {
    double chance = 0;
    double ways = 1;
    for (int k = 0; k <= most; k++) {
      chance += ways / Math.pow(2, n);
      ways = ways * (n - k) / (k + 1);
    }
    return chance;
  }

  @Test
  void bothLimitsCountAgainstWithinAndOneAgainstItsOwnSide() {
    BeyondLimits beyond =
        BeyondLimits.of(
            Sample.of(0.5, -0.5, 0, 0.1, 0.1, Tolerance.THIRD.slowStops(), 0.2), Tolerance.THIRD);
    assertThat(beyond).isEqualTo(new BeyondLimits(7, 1, 1));
    assertThat(beyond.allow(Verdict.WITHIN)).isFalse();
    assertThat(new BeyondLimits(7, 1, 0).allow(Verdict.WITHIN)).isTrue();
    assertThat(new BeyondLimits(7, 6, 0).allow(Verdict.SLOW)).isTrue();
    assertThat(new BeyondLimits(7, 5, 0).allow(Verdict.SLOW)).isFalse();
    assertThat(new BeyondLimits(7, 0, 5).allow(Verdict.FAST)).isFalse();
    assertThat(new BeyondLimits(6, 3, 0).allow(Verdict.WITHIN)).isTrue();
    // Two of seven beyond are six of twenty at that share.
    assertThat(new BeyondLimits(7, 2, 0).allow(Verdict.WITHIN, 19)).isFalse();
    assertThat(new BeyondLimits(7, 2, 0).allow(Verdict.WITHIN, 20)).isTrue();
    assertThatThrownBy(() -> new BeyondLimits(2, 2, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
