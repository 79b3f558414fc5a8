package org.halflight.stats;

import org.apache.commons.math3.distribution.FDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * How many times the standard deviation after is the one before.
 *
 * @param ratio standard deviation after over before
 * @param interval of the true ratio, by the F distribution: right for normally distributed firings
 *     only, and wide; the test is {@link BrownForsythe}
 */
public record ScatterRatio(double ratio, Interval interval) {
  /** Least firings in each sample. */
  public static final int LEAST = 2;

  /** Compares two samples at a level of confidence. */
  public static Figure<ScatterRatio> of(Sample before, Sample after, double level) {
    Interval.checkLevel(level);
    int fewest = Math.min(before.n(), after.n());
    if (fewest < LEAST) {
      return new NotEnoughFirings<>(fewest, LEAST);
    }
    double sdBefore = Sample.sdOf(before.values());
    double sdAfter = Sample.sdOf(after.values());
    if (!(sdBefore > 0) || !(sdAfter > 0)) {
      return new NoScatter<>();
    }
    double ratio = sdAfter / sdBefore;
    FDistribution f = new FDistribution(null, after.n() - 1, before.n() - 1);
    double low = ratio / Math.sqrt(f.inverseCumulativeProbability((1 + level) / 2));
    double high = ratio / Math.sqrt(f.inverseCumulativeProbability((1 - level) / 2));
    return new Known<>(new ScatterRatio(ratio, new Interval(low, high, level)));
  }
}
