package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.validation.ComparisonStudy.ALLOWED_FOR;
import static org.halflight.validation.ComparisonStudy.ALLOWED_FOR_WHOLE;
import static org.halflight.validation.ComparisonStudy.sd;

import java.util.Arrays;
import org.halflight.fixtures.Seed;
import org.halflight.validation.ComparisonStudy.Found;
import org.halflight.validation.DrawnRuns.Law;
import org.halflight.verdict.FindingPower;
import org.junit.jupiter.api.Test;

/** A small, fixed part of what docs/validation.md counts on drawn runs. */
class ComparisonStudyTest {
  private static final int PAIRS = 150;

  /** Of so many pairs at 6 in 100, more occur three times in a thousand (binomial). */
  private static final int MOST = 18;

  @Test
  void runsThatDependOnThemselvesAreSeldomCalledChanged(@Seed(15) long seed) {
    for (Law law : new Law[] {ALLOWED_FOR, ALLOWED_FOR_WHOLE}) {
      for (int firings : new int[] {5, 10}) {
        assertThat(Found.of(seed, PAIRS, sd(0.03), law, firings, law, firings).anything())
            .as("seed %d, %s, %d firings", seed, law, firings)
            .isLessThanOrEqualTo(MOST);
      }
    }
  }

  @Test
  void aWarmUpInOneRunIsNoChange(@Seed(15) long seed) {
    Law warm = Law.INDEPENDENT.warming(0.1, 10);
    assertThat(Found.of(seed, PAIRS, sd(0.05), warm, 5, Law.INDEPENDENT, 5).anything())
        .as("seed %d", seed)
        .isLessThanOrEqualTo(MOST);
  }

  @Test
  void unequalNumbersOfFiringsThatCreepAreNoChange(@Seed(15) long seed) {
    Law creep = Law.INDEPENDENT.creeping(0.02);
    assertThat(Found.of(seed, PAIRS, sd(0.03), creep, 5, creep, 10).anything())
        .as("seed %d", seed)
        .isLessThanOrEqualTo(MOST);
  }

  @Test
  void anotherRigIsNoChange(@Seed(15) long seed) {
    assertThat(ComparisonStudy.otherRig(seed, PAIRS, 5, true))
        .as("seed %d", seed)
        .isLessThanOrEqualTo(MOST);
  }

  @Test
  void oneSpeedAloneMovesNoDial(@Seed(15) long seed) {
    int said =
        ComparisonStudy.dialSaid(seed, PAIRS, Arrays.copyOf(sd(0.03), 4), 6 * 0.03, 3)
            + ComparisonStudy.dialSaid(seed, PAIRS, sd(0.03), 6 * 0.03, 3);
    assertThat(said).as("seed %d", seed).isLessThanOrEqualTo(MOST);
  }

  @Test
  void shiftsThatAreLargeEnoughAreFound(@Seed(15) long seed) {
    // 8 in 10 are wanted; fewer than 106 of 150 occur three times in a thousand.
    assertThat(ComparisonStudy.found(seed, PAIRS, Law.INDEPENDENT, 3, 6.0))
        .as("3, seed %d", seed)
        .isGreaterThanOrEqualTo(106);
    assertThat(ComparisonStudy.found(seed, PAIRS, Law.INDEPENDENT, 5, 4.7))
        .as("5, seed %d", seed)
        .isGreaterThanOrEqualTo(106);
    assertThat(ComparisonStudy.found(seed, PAIRS, Law.INDEPENDENT, 10, 3.6))
        .as("10, seed %d", seed)
        .isGreaterThanOrEqualTo(106);
  }

  @Test
  void theShiftThatIsStatedIsFoundEvenWhereRunsDependOnThemselves(@Seed(15) long seed) {
    int speeds = DrawnRuns.DIAL.size();
    FindingPower power = new FindingPower(speeds + 1, speeds);
    for (int firings : new int[] {3, 5, 10}) {
      assertThat(
              ComparisonStudy.found(seed, PAIRS, ALLOWED_FOR, firings, power.shiftInSds(firings)))
          .as("%d, seed %d", firings, seed)
          .isGreaterThanOrEqualTo(106);
    }
  }
}
