package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

class TwoLevelRuleTest {
  /** Abramowitz and Stegun, table 25.4: nodes of order 2 are -+0.577350269189626 on -1 to 1. */
  @Test
  void theLevelsAreTheGaussLegendreNodes() {
    assertThat(LevelPair.GAUSS.low()).isCloseTo((1 - 0.577350269189626) / 2, within(1e-15));
    assertThat(LevelPair.GAUSS.high()).isCloseTo((1 + 0.577350269189626) / 2, within(1e-15));
  }

  @Test
  void exactForAnyCubic(@Seed long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 100; i++) {
      double a = random.nextDouble();
      double b = random.nextDouble();
      double c = random.nextDouble();
      double d = random.nextDouble();
      double low =
          a + LevelPair.GAUSS.low() * (b + LevelPair.GAUSS.low() * (c + LevelPair.GAUSS.low() * d));
      double high =
          a
              + LevelPair.GAUSS.high()
                  * (b + LevelPair.GAUSS.high() * (c + LevelPair.GAUSS.high() * d));
      assertThat(TwoLevelRule.effectiveSeconds(low, high, LevelPair.GAUSS))
          .as("seed %d", seed)
          .isCloseTo(a + b / 2 + c / 3 + d / 4, within(1e-12));
    }
  }

  @Test
  void atOtherLevelsExactWhereAreaGrowsEvenly() {
    for (double low = 0.1814; low < 0.2413; low += 0.005) {
      for (double high = 0.7588; high < 0.8187; high += 0.005) {
        LevelPair levels = new LevelPair(low, high);
        // 3 s in total, ramps of 2 s together: 2 s effective.
        assertThat(TwoLevelRule.effectiveSeconds(3 - 2 * low, 3 - 2 * high, levels))
            .isCloseTo(2, within(1e-12));
      }
    }
  }

  /** At the nodes and at levels 0.03 beside them; by closed forms, outside this program. */
  @Test
  void theErrorIsAShareOfWhatTheWidthsDifferBy() {
    double low = LevelPair.GAUSS.low();
    double high = LevelPair.GAUSS.high();
    assertThat(TwoLevelRule.errorShare(LevelPair.GAUSS)).isCloseTo(0.0386, within(5e-5));
    assertThat(TwoLevelRule.errorShare(new LevelPair(low + 0.03, high - 0.03)))
        .isCloseTo(0.0735, within(5e-5));
    assertThat(TwoLevelRule.errorShare(new LevelPair(low - 0.03, high + 0.03)))
        .isCloseTo(0.0286, within(5e-5));
    assertThat(TwoLevelRule.errorSeconds(3e-3, 2e-3, LevelPair.GAUSS))
        .isCloseTo(38.6e-6, within(0.05e-6));
    // Noise at a pulse without ramps makes no bound below 0.
    assertThat(TwoLevelRule.errorSeconds(2e-3, 3e-3, LevelPair.GAUSS)).isZero();
  }

  @Test
  void theShareStaysUnderSevenAndAHalfPercentWhereverLevelsAreAllowed() {
    double greatest = 0;
    for (double low = 0.18133; low <= 0.24132; low += 0.005) {
      for (double high = 0.75868; high <= 0.81867; high += 0.005) {
        LevelPair levels = new LevelPair(low, high);
        assertThat(TwoLevelRule.allows(levels)).isTrue();
        greatest = Math.max(greatest, TwoLevelRule.errorShare(levels));
      }
    }
    assertThat(greatest).isBetween(0.07, 0.0736);
  }

  @Test
  void levelsTooFarOffAreRefused() {
    LevelPair tenAndNinety = new LevelPair(0.1, 0.9);
    assertThat(TwoLevelRule.allows(tenAndNinety)).isFalse();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> TwoLevelRule.effectiveSeconds(2, 1, tenAndNinety));
  }

  /** Why the rule is void where the leaves turn round too early: triangles, by plain geometry. */
  @Test
  void aTriangleThatPeaksBelowFullLightReadsWrong() {
    assertThat(triangleError(0.8)).isCloseTo(-0.0625, within(1e-4));
    assertThat(triangleError(0.5)).isCloseTo(0.1547, within(1e-4));
  }

  private static double triangleError(double peak) {
    double low = Math.max(0, peak - LevelPair.GAUSS.low());
    double high = Math.max(0, peak - LevelPair.GAUSS.high());
    double exact = peak * peak / 2;
    return TwoLevelRule.effectiveSeconds(low, high, LevelPair.GAUSS) / exact - 1;
  }
}
