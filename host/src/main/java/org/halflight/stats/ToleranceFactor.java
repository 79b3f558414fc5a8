package org.halflight.stats;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Factors k such that mean -+ k sd holds a part of all single firings, with a confidence, for
 * normally distributed firings. {@code content} and {@code confidence} lie above 0 and below 1;
 * {@code n} is 2 or more.
 */
public final class ToleranceFactor {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Keeps its rules: to find one takes longer than to integrate by it. */
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

  private ToleranceFactor() {}

  /** One limit, exact: quantile of the noncentral t over sqrt(n) (ISO 16269-6). */
  public static double oneSided(int n, double content, double confidence) {
    check(n, content, confidence);
    double root = Math.sqrt(n);
    double delta = NORMAL.inverseCumulativeProbability(content) * root;
    return new NoncentralT(n - 1, delta).quantile(confidence) / root;
  }

  /**
   * One limit, by the approximation of Natrella (1963) that the NIST/SEMATECH e-Handbook prints;
   * for comparison with printed tables only.
   *
   * @throws IllegalArgumentException also when {@code n} is too small for the formula
   */
  public static double oneSidedNatrella(int n, double content, double confidence) {
    check(n, content, confidence);
    double zContent = NORMAL.inverseCumulativeProbability(content);
    double zConfidence = NORMAL.inverseCumulativeProbability(confidence);
    double a = 1 - zConfidence * zConfidence / (2 * (n - 1));
    double b = zContent * zContent - zConfidence * zConfidence / n;
    if (!(a > 0)) {
      throw new IllegalArgumentException("the approximation does not exist for " + n + " firings");
    }
    return (zContent + Math.sqrt(zContent * zContent - a * b)) / a;
  }

  /**
   * Two limits, exact: the k for which the integral over the possible means of the chance that the
   * sample's standard deviation is large enough equals the confidence (Odeh 1978; ISO 16269-6).
   */
  public static double twoSided(int n, double content, double confidence) {
    check(n, content, confidence);
    // Past nine standard errors from the true mean nothing is left.
    GaussIntegrator over = GAUSS.legendre(80, 0, 9 / Math.sqrt(n));
    int points = over.getNumberOfPoints();
    double[] weight = new double[points];
    double[] squaredHalfWidth = new double[points];
    for (int i = 0; i < points; i++) {
      double away = over.getPoint(i);
      weight[i] =
          over.getWeight(i) * 2 * Math.sqrt(n / (2 * Math.PI)) * Math.exp(-n * away * away / 2);
      double half = halfWidth(away, content);
      squaredHalfWidth[i] = half * half;
    }
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, n - 1);
    double rough = twoSidedHowe(n, content, confidence);
    return new BrentSolver(1e-12, 1e-12)
        .solve(
            200,
            k -> {
              double chance = 0;
              for (int i = 0; i < points; i++) {
                double limit = (n - 1) * squaredHalfWidth[i] / (k * k);
                chance += weight[i] * (1 - chi.cumulativeProbability(limit));
              }
              return chance - confidence;
            },
            rough / 3,
            rough * 3);
  }

  /** Two limits, by Howe (1969): within 1 % of exact for 5 firings and 90 or 95 % of them. */
  public static double twoSidedHowe(int n, double content, double confidence) {
    check(n, content, confidence);
    double z = NORMAL.inverseCumulativeProbability((1 + content) / 2);
    double chi =
        new ChiSquaredDistribution(null, n - 1).inverseCumulativeProbability(1 - confidence);
    return z * Math.sqrt((n - 1) * (1 + 1.0 / n) / chi);
  }

  /** Half the width of an interval around a mean that is {@code away} that holds the content. */
  private static double halfWidth(double away, double content) {
    double z = NORMAL.inverseCumulativeProbability((1 + content) / 2);
    return new BrentSolver(1e-14, 1e-14)
        .solve(
            200,
            half ->
                NORMAL.cumulativeProbability(away + half)
                    - NORMAL.cumulativeProbability(away - half)
                    - content,
            0,
            z + away + 1);
  }

  private static void check(int n, double content, double confidence) {
    if (n < 2) {
      throw new IllegalArgumentException("a tolerance factor needs 2 firings, not " + n);
    }
    Interval.checkLevel(content);
    Interval.checkLevel(confidence);
  }
}
