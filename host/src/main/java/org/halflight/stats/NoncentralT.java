package org.halflight.stats;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Erf;
import org.apache.commons.math3.special.Gamma;

/**
 * The distribution of (Z + delta) / S with Z standard normal and S the square root of chi-squared
 * over its degrees of freedom: what tolerance factors and the power of t tests need.
 *
 * <p>By quadrature over S, P(T &lt;= t) = E Phi(t S - delta); good to about 1e-12.
 *
 * @param degreesOfFreedom 1 or more, need not be whole
 * @param delta shift of the numerator in standard deviations
 */
record NoncentralT(double degreesOfFreedom, double delta) {
  private static final int PANELS = 10;
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

  NoncentralT {
    if (!(degreesOfFreedom >= 1) || !Double.isFinite(delta)) {
      throw new IllegalArgumentException(
          "degrees of freedom " + degreesOfFreedom + " and shift " + delta);
    }
  }

  double cumulative(double t) {
    double nu = degreesOfFreedom;
    double logScale = Math.log(2) + nu / 2 * Math.log(nu / 2) - Gamma.logGamma(nu / 2);
    UnivariateFunction integrand =
        s -> normal(t * s - delta) * Math.exp(logScale + (nu - 1) * Math.log(s) - nu * s * s / 2);
    double width = 12 / Math.sqrt(2 * nu);
    double low = Math.max(0, 1 - width);
    double high = 1 + width;
    // Phi turns from 0 to 1 within a few 1/t around delta/t: panels end there.
    double turn = t == 0 ? low : delta / t;
    double turnWidth = t == 0 ? 0 : 8 / Math.abs(t);
    double[] ends = {low, turn - turnWidth, turn, turn + turnWidth, high};
    double sum = 0;
    double from = low;
    for (double end : ends) {
      double to = Math.min(high, Math.max(low, end));
      for (int i = 0; i < PANELS && to > from; i++) {
        double step = (to - from) / PANELS;
        GaussIntegrator panel = GAUSS.legendre(20, from + i * step, from + (i + 1) * step);
        sum += panel.integrate(integrand);
      }
      from = Math.max(from, to);
    }
    return Math.min(1, Math.max(0, sum));
  }

  /** The value below which T stays with probability {@code p}, above 0 and below 1. */
  double quantile(double p) {
    Interval.checkLevel(p);
    double reach = 1;
    double low = delta - reach;
    double high = delta + reach;
    while (cumulative(low) > p) {
      reach *= 2;
      low -= reach;
    }
    reach = 1;
    while (cumulative(high) < p) {
      reach *= 2;
      high += reach;
    }
    return new BrentSolver(1e-13, 1e-12).solve(500, t -> cumulative(t) - p, low, high);
  }

  private static double normal(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }
}
