package org.halflight.calibration;

import org.halflight.stats.Sample;

/**
 * How sure the mean of repeated stamps is. Pulses and stamps hang on one clock, so equal pulses get
 * equal stamps and their scatter says nothing of the step of 62.5 ns that each was cut to: the mean
 * is never taken as surer than one step, evenly spread.
 */
final class StampStep {
  /** Standard uncertainty of one stamp by its step alone. */
  static final double SECONDS = 62.5e-9 / Math.sqrt(12);

  /** The same of a width, which has two. */
  static final double WIDTH_SECONDS = SECONDS * Math.sqrt(2);

  private StampStep() {}

  /** Standard uncertainty of the mean of some values. */
  static double ofMean(double[] values, double stepSeconds) {
    double scatter = values.length < 2 ? 0 : Sample.of(values).sd().get();
    return Math.hypot(stepSeconds, scatter / Math.sqrt(values.length));
  }
}
