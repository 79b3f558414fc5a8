package org.halflight.stats;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * How far a sample moved, by ranks: the median of all differences of a firing after and one before
 * (Hodges and Lehmann 1963), with the interval that belongs to the rank test (Moses; Hollander and
 * Wolfe). Ties make the interval cover no less than it says.
 *
 * @param shift after less before
 * @param interval of the shift; its level is the one it has, which is below the one asked for where
 *     the firings are too few to reach it
 */
public record HodgesLehmann(double shift, Interval interval) {
  /** Least firings in each sample. */
  public static final int LEAST = 3;

  /** The shift and its interval at no less than a level, where that exists. */
  public static Figure<HodgesLehmann> of(Sample before, Sample after, double level) {
    Interval.checkLevel(level);
    int fewest = Math.min(before.n(), after.n());
    if (fewest < LEAST) {
      return new NotEnoughFirings<>(fewest, LEAST);
    }
    double[] differences = new double[before.n() * after.n()];
    int at = 0;
    for (double a : after.values()) {
      for (double b : before.values()) {
        differences[at++] = a - b;
      }
    }
    Arrays.sort(differences);
    Rank rank = rank(before.n(), after.n(), level);
    return new Known<>(
        new HodgesLehmann(
            Sample.medianOf(differences),
            new Interval(
                differences[rank.place - 1],
                differences[differences.length - rank.place],
                rank.level)));
  }

  /** Which difference from either end bounds the interval, from 1, and the level that this has. */
  private record Rank(int place, double level) {}

  private static Rank rank(int before, int after, double level) {
    if (before + after > RankTest.EXACT_UP_TO) {
      double pairs = (double) before * after;
      double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + level) / 2);
      double place = pairs / 2 - z * Math.sqrt(pairs * (before + after + 1) / 12);
      return new Rank(Math.max(1, (int) Math.floor(place)), level);
    }
    double[] counts = InversionCounts.ofTwoSamples(before, after);
    double total = Arrays.stream(counts).sum();
    // The widest tail that still leaves the level; the first place is taken in any case.
    double tail = counts[0];
    int place = 1;
    while (2 * (tail + counts[place]) <= (1 - level) * total) {
      tail += counts[place];
      place++;
    }
    return new Rank(place, 1 - 2 * tail / total);
  }
}
