package org.halflight.stats;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Student's distribution for degrees of freedom that may be endless. From a million on it is the
 * normal one to six digits (the first term of the difference of the quantiles is {@code (z^3 + z) /
 * (4 nu)}: Abramowitz and Stegun 26.7.5), and there the library's continued fraction takes minutes.
 */
public final class Student {
  private static final double ENDLESS = 1e6;
  private static final NormalDistribution NORMAL = new NormalDistribution();

  private Student() {}

  /**
   * The quantile of a probability.
   *
   * @param degrees of freedom, above 0; may be infinite
   */
  public static double quantile(double p, double degrees) {
    return degrees >= ENDLESS
        ? NORMAL.inverseCumulativeProbability(p)
        : new TDistribution(null, degrees).inverseCumulativeProbability(p);
  }

  /**
   * The chance of a value below t.
   *
   * @param degrees of freedom, above 0; may be infinite
   */
  public static double below(double t, double degrees) {
    return degrees >= ENDLESS
        ? NORMAL.cumulativeProbability(t)
        : new TDistribution(null, degrees).cumulativeProbability(t);
  }
}
