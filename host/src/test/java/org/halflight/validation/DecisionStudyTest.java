package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.fixtures.Seed;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.Verdict;
import org.junit.jupiter.api.Test;

/**
 * The fixed part of {@link DecisionStudy}: figures that the decision has to keep. Each has two
 * standard errors of its own number of samples to it, no more.
 */
class DecisionStudyTest {
  private static final int SAMPLES = 8_000;
  private static final double SD = 0.1;

  @Test
  void aMedianOnTheLimitIsSeldomCalledWithin(@Seed(15) long seed) {
    for (Scatter scatter : DecisionStudy.TARGETED) {
      for (int n : List.of(3, 4, 6, 7, 10)) {
        double most = n == 3 ? 0.085 : 0.065;
        assertThat(DecisionStudy.falseWithin(scatter, SD, n, SAMPLES, seed).now())
            .as("%s, %d firings", scatter, n)
            .isLessThanOrEqualTo(most + chance(most));
      }
    }
  }

  /** By the mean alone it was said in 13 %. */
  @Test
  void scatterToOneSideIsCaughtByTheCount(@Seed(15) long seed) {
    DecisionStudy.Shares ten = DecisionStudy.falseWithin(Scatter.FAST_TAIL, SD, 10, SAMPLES, seed);
    assertThat(ten.byMean()).isGreaterThan(0.12);
    assertThat(ten.now()).isLessThan(0.0547 + chance(0.0547));
    DecisionStudy.Shares slow =
        DecisionStudy.claimed(
            Verdict.SLOW, Scatter.SLOW_TAIL, DecisionStudy.LIMIT, SD, 10, SAMPLES, seed);
    assertThat(slow.byMean()).isGreaterThan(0.12);
    assertThat(slow.now()).isLessThan(0.0547 + chance(0.0547));
  }

  @Test
  void normalScatterLosesLittle(@Seed(15) long seed) {
    assertThat(DecisionStudy.greatestLoss(6, 500, seed)).isZero();
    for (int n : List.of(7, 10)) {
      assertThat(DecisionStudy.greatestLoss(n, SAMPLES / 2, seed))
          .isBetween(0.05, 0.15 + chance(0.15) * Math.sqrt(2));
    }
  }

  @Test
  void firingUntilItIsDecidedKeepsItsRisk(@Seed(15) long seed) {
    for (Scatter scatter : List.of(Scatter.NORMAL, Scatter.SLOW_TAIL, Scatter.HANGING)) {
      assertThat(DecisionStudy.untilDecided(scatter, SD, 1_000, seed).now())
          .as("%s", scatter)
          .isLessThanOrEqualTo(DecisionRule.RISK + 2 * Math.sqrt(0.05 * 0.95 / 1_000));
    }
  }

  @Test
  void aSpeedThatHungIsNeverWithinHoweverItIsFired() {
    for (DecisionRule rule : DecisionRule.values()) {
      var speed = DecisionStudy.summary(rule, 1, 0.01, 0.02, 0, -0.01, 0.01, 0.02);
      assertThat(speed.verdict()).isEqualTo(Verdict.SOME_FAILED);
      assertThat(speed.isMeanDecided()).as("and it is not fired on for ever").isTrue();
      assertThat(DecisionStudy.summary(rule, 0, 0.01, 0.02, 0, -0.01, 0.01, 0.02).verdict())
          .isEqualTo(Verdict.WITHIN);
    }
  }

  private static double chance(double share) {
    return 2 * Math.sqrt(share * (1 - share) / SAMPLES);
  }
}
