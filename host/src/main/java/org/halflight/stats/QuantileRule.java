package org.halflight.stats;

import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * How to read a quantile between two firings; numbers after Hyndman and Fan (1996). Below the first
 * and above the last firing all give that firing.
 */
public enum QuantileRule {
  /** R6: place p (n + 1); as in the NIST/SEMATECH e-Handbook. */
  WEIBULL_R6(0, 0),
  /** R7: place 1 + p (n - 1); as most spreadsheets have it. */
  LINEAR_R7(1, 1),
  /** R8: place 1/3 + p (n + 1/3); nearly unbiased for the median whatever the distribution. */
  MEDIAN_UNBIASED_R8(1 / 3.0, 1 / 3.0);

  /** Plotting position (k - a) / (n + 1 - a - b) of the k-th value. */
  private final double a;

  private final double b;

  QuantileRule(double a, double b) {
    this.a = a;
    this.b = b;
  }

  /**
   * @param p the part of firings below, from 0 to 1
   */
  public Figure<Double> of(Sample sample, double p) {
    if (!(p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("a part lies from 0 to 1, not " + p);
    }
    int n = sample.n();
    if (n < 1) {
      return new NotEnoughFirings<>(n, 1);
    }
    double[] sorted = sample.sorted();
    double place = Math.min(n, Math.max(1, a + p * (n + 1 - a - b)));
    int below = (int) Math.floor(place);
    double low = sorted[below - 1];
    double high = sorted[Math.min(n, below + 1) - 1];
    return new Known<>(low + (place - below) * (high - low));
  }
}
