package org.halflight.stats;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
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

  /** A quantile is a search, and a few of them are asked for again and again. */
  private static final Map<Asked, Double> QUANTILES = new ConcurrentHashMap<>();

  private static final int MOST_KEPT = 2000;

  private record Asked(double p, double degrees) {}

  private Student() {}

  /**
   * The quantile of a probability.
   *
   * @param degrees of freedom, above 0; may be infinite
   */
  public static double quantile(double p, double degrees) {
    if (degrees >= ENDLESS) {
      return NORMAL.inverseCumulativeProbability(p);
    }
    Asked asked = new Asked(p, degrees);
    Double known = QUANTILES.get(asked);
    if (known != null) {
      return known;
    }
    double quantile = new TDistribution(null, degrees).inverseCumulativeProbability(p);
    if (degrees == Math.rint(degrees) && QUANTILES.size() < MOST_KEPT) {
      QUANTILES.put(asked, quantile);
    }
    return quantile;
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
