package org.halflight.stats;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Whether firings rise or fall in the order in which they were fired (Mann 1945, Kendall 1948). Up
 * to {@value #EXACT_UP_TO} firings the chances are counted over all orders, ties included; beyond,
 * the normal distribution is used with its corrections for ties and continuity.
 *
 * @param s pairs in which the later firing is above, less pairs in which it is below
 * @param pFalling the chance of an {@code s} at most as large where order does not matter
 * @param pRising the chance of an {@code s} at least as large where order does not matter
 * @param exact whether the chances were counted
 */
public record MannKendall(int s, double pFalling, double pRising, boolean exact) {
  /** Least firings: of four, even a perfect trend has a two-sided chance of one in twelve. */
  public static final int LEAST = 5;

  /** Up to this many firings the chances are counted. */
  public static final int EXACT_UP_TO = 60;

  /** Tests firings in their order. */
  public static Figure<MannKendall> of(Sample sample) {
    if (sample.n() < LEAST) {
      return new NotEnoughFirings<>(sample.n(), LEAST);
    }
    double[] values = sample.values();
    int[] groups = Ties.groups(values);
    if (groups.length == 1) {
      return new NoScatter<>();
    }
    int s = s(values);
    return new Known<>(
        values.length <= EXACT_UP_TO ? counted(s, groups) : approximated(s, values.length, groups));
  }

  /** Twice the smaller side, at most 1. */
  public double p() {
    return Math.min(1, 2 * Math.min(pFalling, pRising));
  }

  static int s(double[] values) {
    int s = 0;
    for (int i = 0; i < values.length; i++) {
      for (int j = i + 1; j < values.length; j++) {
        // Not Double.compare, which tells 0 from -0.
        s += values[j] > values[i] ? 1 : values[j] < values[i] ? -1 : 0;
      }
    }
    return s;
  }

  private static MannKendall counted(int s, int[] groups) {
    double[] counts = InversionCounts.ofOrders(groups);
    int pairs = counts.length - 1;
    double total = Arrays.stream(counts).sum();
    double falling = 0;
    double rising = 0;
    for (int wrong = 0; wrong <= pairs; wrong++) {
      int other = pairs - 2 * wrong;
      falling += other <= s ? counts[wrong] : 0;
      rising += other >= s ? counts[wrong] : 0;
    }
    return new MannKendall(s, falling / total, rising / total, true);
  }

  static MannKendall approximated(int s, int n, int[] groups) {
    double sd = Math.sqrt(variance(n, groups));
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    // One step of S is 2, so half a step is 1.
    return new MannKendall(
        s,
        normal.cumulativeProbability((s + 1) / sd),
        normal.cumulativeProbability((-s + 1) / sd),
        false);
  }

  /** The variance of S where order does not matter, with ties. */
  static double variance(int n, int... groups) {
    double sum = n * (n - 1.0) * (2.0 * n + 5);
    for (double group : groups) {
      sum -= group * (group - 1) * (2 * group + 5);
    }
    return sum / 18;
  }
}
