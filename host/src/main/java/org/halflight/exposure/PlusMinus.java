package org.halflight.exposure;

/**
 * Independent errors put together: what the sum stays within 19 times in 20. The greatest
 * rectangular one counts as such and the rest as normal, which is right where one rectangle rules
 * and where none does (JCGM 100:2008, G.2).
 */
final class PlusMinus {
  /**
   * The factor on the standard uncertainty by the share that one rectangle has in the variance, in
   * tenths: computed from the distribution of the sum of a rectangular and a normal error.
   */
  private static final double[] FACTORS = {
    1.960, 1.959, 1.955, 1.948, 1.936, 1.917, 1.892, 1.857, 1.810, 1.744, 1.645
  };

  private double variance;
  private double greatest;

  /** An error anywhere within plus or minus a bound. */
  PlusMinus within(double bound) {
    double part = bound * bound / 3;
    variance += part;
    greatest = Math.max(greatest, part);
    return this;
  }

  /** A normal error. */
  PlusMinus normal(double standard) {
    variance += standard * standard;
    return this;
  }

  double value() {
    if (!(variance > 0)) {
      return 0;
    }
    double tenths = greatest / variance * (FACTORS.length - 1);
    int i = (int) Math.min(tenths, FACTORS.length - 2.0);
    double factor = FACTORS[i] + (tenths - i) * (FACTORS[i + 1] - FACTORS[i]);
    return factor * Math.sqrt(variance);
  }
}
