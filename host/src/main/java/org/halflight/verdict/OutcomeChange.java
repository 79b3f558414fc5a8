package org.halflight.verdict;

import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.HypergeometricDistribution;
import org.halflight.session.Outcome;

/**
 * How often releases came to an outcome in two runs, over the speeds that both have.
 *
 * @param outcome which
 * @param countBefore how often in the earlier run
 * @param triesBefore of how many releases
 * @param countAfter how often in the later run
 * @param triesAfter of how many releases
 */
public record OutcomeChange(
    Outcome outcome, int countBefore, int triesBefore, int countAfter, int triesAfter) {
  /** Tables that are as likely as the one that was seen differ in the last digits. */
  private static final double ROUNDING = 1 + 1e-9;

  public OutcomeChange {
    if (countBefore < 0 || countBefore > triesBefore || countAfter < 0 || countAfter > triesAfter) {
      throw new IllegalArgumentException(
          countBefore + " of " + triesBefore + " and " + countAfter + " of " + triesAfter);
    }
  }

  static OutcomeChange of(RunComparison runs, Outcome outcome) {
    return new OutcomeChange(
        outcome,
        sum(runs, speed -> speed.before().count(outcome)),
        sum(runs, speed -> speed.before().tries()),
        sum(runs, speed -> speed.after().count(outcome)),
        sum(runs, speed -> speed.after().tries()));
  }

  private static int sum(RunComparison runs, ToIntFunction<SpeedComparison> count) {
    return runs.speeds().stream().mapToInt(count).sum();
  }

  /**
   * The chance of counts at least as unlikely where both runs are alike (the exact test of Fisher
   * 1922, two-sided). Said beside the counts; nothing is called changed by it.
   */
  public double p() {
    int both = triesBefore + triesAfter;
    int count = countBefore + countAfter;
    if (both == 0) {
      return 1;
    }
    HypergeometricDistribution chances =
        new HypergeometricDistribution(null, both, count, triesBefore);
    double seen = chances.probability(countBefore) * ROUNDING;
    return Math.min(
        1,
        IntStream.rangeClosed(0, Math.min(count, triesBefore))
            .mapToDouble(chances::probability)
            .filter(chance -> chance <= seen)
            .sum());
  }
}
