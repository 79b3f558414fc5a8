package org.halflight.stats;

import java.util.List;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Whether samples scatter alike, for normally distributed firings only (Bartlett 1937): sharper
 * than {@link BrownForsythe} then, misleading otherwise.
 *
 * @param t Bartlett's statistic, nearly chi-squared
 * @param degreesOfFreedom samples less one
 * @param p the chance of a statistic at least as large where all scatter alike
 */
public record Bartlett(double t, int degreesOfFreedom, double p) {
  /** Least firings in each sample. */
  public static final int LEAST = 2;

  /**
   * @param samples two or more
   */
  public static Figure<Bartlett> of(List<Sample> samples) {
    if (samples.size() < 2) {
      throw new IllegalArgumentException("comparing takes two samples");
    }
    int fewest = samples.stream().mapToInt(Sample::n).min().getAsInt();
    if (fewest < LEAST) {
      return new NotEnoughFirings<>(fewest, LEAST);
    }
    double within = 0;
    double squares = 0;
    double logs = 0;
    double inverses = 0;
    for (Sample sample : samples) {
      double degrees = sample.n() - 1;
      double own = Sample.squaresAroundMean(sample.values());
      if (!(own > 0)) {
        return new NoScatter<>();
      }
      within += degrees;
      squares += own;
      logs += degrees * Math.log(own / degrees);
      inverses += 1 / degrees;
    }
    int between = samples.size() - 1;
    double correction = 1 + (inverses - 1 / within) / (3 * between);
    double t = Math.max(0, (within * Math.log(squares / within) - logs) / correction);
    double p = 1 - new ChiSquaredDistribution(null, between).cumulativeProbability(t);
    return new Known<>(new Bartlett(t, between, p));
  }
}
