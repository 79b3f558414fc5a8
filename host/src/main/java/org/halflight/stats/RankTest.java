package org.halflight.stats;

import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.CombinatoricsUtils;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Whether one sample lies above another, by ranks alone (Wilcoxon 1945, Mann and Whitney 1947).
 *
 * <p>Ties get their middle rank, and up to {@value #EXACT_UP_TO} firings the chances are counted
 * over all ways to deal these ranks to the two samples. Beyond, the normal distribution is used
 * with its corrections for ties and continuity.
 *
 * @param w pairs in which the firing after is above the one before, ties counting half
 * @param pBelow the chance of a {@code w} at most as large where both are alike
 * @param pAbove the chance of a {@code w} at least as large where both are alike
 * @param exact whether the chances were counted
 */
public record RankTest(double w, double pBelow, double pAbove, boolean exact) {
  /** Least firings in each sample: fewer can never come below one in twenty on one side. */
  public static final int LEAST = 3;

  /** Up to this many firings in both samples together the chances are counted. */
  public static final int EXACT_UP_TO = 60;

  /** Compares two samples. */
  public static Figure<RankTest> of(Sample before, Sample after) {
    int fewest = Math.min(before.n(), after.n());
    if (fewest < LEAST) {
      return new NotEnoughFirings<>(fewest, LEAST);
    }
    double[] all =
        DoubleStream.concat(DoubleStream.of(before.values()), DoubleStream.of(after.values()))
            .toArray();
    int[] groups = Ties.groups(all);
    if (groups.length == 1) {
      return new NoScatter<>();
    }
    double w = pairsAbove(before.values(), after.values());
    return new Known<>(
        all.length <= EXACT_UP_TO
            ? counted(w, groups, before.n(), after.n())
            : approximated(w, groups, before.n(), after.n()));
  }

  /** Twice the smaller side, at most 1. */
  public double p() {
    return Math.min(1, 2 * Math.min(pBelow, pAbove));
  }

  /**
   * The smallest two-sided chance that so many firings can ever give: with all of one sample above
   * all of the other, 2 / (before + after choose before).
   */
  public static double leastP(int before, int after) {
    return Math.min(
        1,
        2
            * Math.exp(
                -CombinatoricsUtils.factorialLog(before + after)
                    + CombinatoricsUtils.factorialLog(before)
                    + CombinatoricsUtils.factorialLog(after)));
  }

  private static double pairsAbove(double[] before, double[] after) {
    double w = 0;
    for (double a : after) {
      for (double b : before) {
        w += a > b ? 1 : a == b ? 0.5 : 0;
      }
    }
    return w;
  }

  private static RankTest counted(double w, int[] groups, int before, int after) {
    int all = before + after;
    // Doubled ranks are whole numbers even for ties.
    int most = all * (all + 1);
    double[][] ways = new double[after + 1][most + 1];
    ways[0][0] = 1;
    int done = 0;
    for (int group : groups) {
      int doubledRank = 2 * done + group + 1;
      for (int member = 0; member < group; member++) {
        done++;
        for (int taken = Math.min(after, done); taken >= 1; taken--) {
          for (int sum = most; sum >= doubledRank; sum--) {
            ways[taken][sum] += ways[taken - 1][sum - doubledRank];
          }
        }
      }
    }
    int seen = (int) Math.round(2 * w) + after * (after + 1);
    double total = 0;
    double below = 0;
    double above = 0;
    for (int sum = 0; sum <= most; sum++) {
      total += ways[after][sum];
      below += sum <= seen ? ways[after][sum] : 0;
      above += sum >= seen ? ways[after][sum] : 0;
    }
    return new RankTest(w, below / total, above / total, true);
  }

  static RankTest approximated(double w, int[] groups, int before, int after) {
    double all = before + after;
    double ties = 0;
    for (double group : groups) {
      ties += group * group * group - group;
    }
    double pairs = (double) before * after;
    double sd = Math.sqrt(pairs / 12 * (all + 1 - ties / (all * (all - 1))));
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double above = w - pairs / 2;
    return new RankTest(
        w,
        normal.cumulativeProbability((above + 0.5) / sd),
        normal.cumulativeProbability((-above + 0.5) / sd),
        false);
  }
}
