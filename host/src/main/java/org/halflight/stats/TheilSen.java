package org.halflight.stats;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * A straight line that wild firings do not bend: the median of the slopes between all pairs (Theil
 * 1950, Sen 1968).
 *
 * @param slope unit of the sample per unit of the times
 * @param intercept the line at time zero: median value less slope times median time
 * @param slopeInterval from the chances of Kendall's S (Sen 1968, with the places of Hollander and
 *     Wolfe, one further in than Sen's own); its level is the one it has, which is below the one
 *     asked for where the firings are too few to reach it. Ties make it cover no less than it says.
 */
public record TheilSen(double slope, double intercept, Interval slopeInterval) {
  /** Least firings, as for the test that the interval comes from. */
  public static final int LEAST = MannKendall.LEAST;

  /** The slope per firing, with the firings numbered from 1. */
  public static Figure<TheilSen> ofOrder(Sample sample, double level) {
    double[] order = new double[sample.n()];
    Arrays.setAll(order, i -> i + 1);
    return of(order, sample, level);
  }

  /**
   * @param times one for each firing, rising, no two the same
   */
  public static Figure<TheilSen> of(double[] times, Sample sample, double level) {
    Interval.checkLevel(level);
    int n = sample.n();
    if (n < LEAST) {
      check(times, sample);
      return new NotEnoughFirings<>(n, LEAST);
    }
    double[] slopes = slopes(times, sample);
    Line line = line(slopes, times, sample);
    return new Known<>(new TheilSen(line.slope(), line.intercept(), interval(slopes, n, level)));
  }

  /**
   * The line alone.
   *
   * @param slope see {@link TheilSen#slope()}
   * @param intercept see {@link TheilSen#intercept()}
   */
  public record Line(double slope, double intercept) {}

  /**
   * The line without its interval, whose exact chances take long for some hundred values.
   *
   * @param times one for each value, rising, no two the same; two or more
   */
  public static Line line(double[] times, Sample sample) {
    return line(slopes(times, sample), times, sample);
  }

  private static Line line(double[] slopes, double[] times, Sample sample) {
    double slope = Sample.medianOf(slopes);
    return new Line(slope, Sample.medianOf(sample.values()) - slope * Sample.medianOf(times));
  }

  private static void check(double[] times, Sample sample) {
    if (times.length != sample.n()) {
      throw new IllegalArgumentException(
          times.length + " times do not go with " + sample.n() + " firings");
    }
    for (int i = 0; i < times.length; i++) {
      if (!Double.isFinite(times[i]) || (i > 0 && !(times[i] > times[i - 1]))) {
        throw new IllegalArgumentException("times must be finite and rise, see number " + i);
      }
    }
  }

  /** Of all pairs, sorted. */
  private static double[] slopes(double[] times, Sample sample) {
    check(times, sample);
    int n = sample.n();
    double[] values = sample.values();
    double[] slopes = new double[n * (n - 1) / 2];
    int at = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        slopes[at++] = (values[j] - values[i]) / (times[j] - times[i]);
      }
    }
    Arrays.sort(slopes);
    return slopes;
  }

  private static Interval interval(double[] slopes, int n, double level) {
    int pairs = slopes.length;
    if (n > MannKendall.EXACT_UP_TO) {
      double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + level) / 2);
      int place = (int) Math.floor((pairs - z * Math.sqrt(MannKendall.variance(n))) / 2);
      return new Interval(
          slopes[Math.max(0, place - 1)], slopes[Math.min(pairs - 1, pairs - place)], level);
    }
    int[] untied = new int[n];
    Arrays.fill(untied, 1);
    double[] counts = InversionCounts.ofOrders(untied);
    double total = Arrays.stream(counts).sum();
    double tail = counts[0];
    int place = 1;
    while (2 * (tail + counts[place]) <= (1 - level) * total) {
      tail += counts[place];
      place++;
    }
    return new Interval(slopes[place - 1], slopes[pairs - place], 1 - 2 * tail / total);
  }
}
