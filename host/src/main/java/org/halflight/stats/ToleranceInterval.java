package org.halflight.stats;

import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Where single exposures fall: holds at least a part of all firings to come, with a confidence, for
 * normally distributed firings.
 *
 * @param low lower limit
 * @param high upper limit
 * @param content the part of firings it holds
 * @param confidence how often an interval made in this way does
 */
public record ToleranceInterval(double low, double high, double content, double confidence) {
  /** Least firings. With so few the interval is honest but very wide: -+36.5 sd at 95 % of 95 %. */
  public static final int LEAST = 2;

  /** Both limits, with the exact factor. */
  public static Figure<ToleranceInterval> of(Sample sample, double content, double confidence) {
    if (sample.n() < LEAST) {
      return new NotEnoughFirings<>(sample.n(), LEAST);
    }
    double half =
        ToleranceFactor.twoSided(sample.n(), content, confidence) * Sample.sdOf(sample.values());
    double mean = Sample.meanOf(sample.values());
    return new Known<>(new ToleranceInterval(mean - half, mean + half, content, confidence));
  }
}
