package org.halflight.calibration;

import org.halflight.stats.Sample;

/**
 * Where a control chart has its middle and its limits.
 *
 * @param centre what is expected
 * @param sd scatter of single values where nothing is wrong
 */
public record ControlLimits(double centre, double sd) {
  /** Mean range of two normal values in standard deviations, as tables print it. */
  static final double RANGE_OF_TWO = 1.128;

  public ControlLimits {
    if (!Double.isFinite(centre) || !(sd > 0 && Double.isFinite(sd))) {
      throw new IllegalArgumentException("no limits: " + centre + ", " + sd);
    }
  }

  /**
   * From values of a time when nothing was wrong: the scatter is their mean moving range over
   * 1.128, which a slow drift does not widen (NIST/SEMATECH e-Handbook 6.3.2.2).
   *
   * @param values two or more, not all alike
   */
  public static ControlLimits of(double... values) {
    if (values.length < 2) {
      throw new IllegalArgumentException("limits take two values, not " + values.length);
    }
    double ranges = 0;
    for (int i = 1; i < values.length; i++) {
      ranges += Math.abs(values[i] - values[i - 1]);
    }
    return new ControlLimits(
        Sample.of(values).mean().get(), ranges / (values.length - 1) / RANGE_OF_TWO);
  }

  /** The value that lies so many standard deviations above the middle; below it if negative. */
  public double at(double deviations) {
    return centre + deviations * sd;
  }
}
