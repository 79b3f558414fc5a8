package org.halflight.profile;

/**
 * The line of measured against true widths of reference pulses at one channel: {@code measured =
 * intercept + slope true}. LED and stamps hang on the same clock, so the slope is 1 by
 * construction; it is tested and then fixed.
 *
 * @param interceptSeconds the width of a pulse of no length
 * @param slope 1 where it was fixed
 * @param interceptVariance variance of the intercept, in square seconds
 * @param slopeVariance variance of the slope; 0 where it was fixed
 * @param covariance of intercept and slope, in seconds
 * @param residualSdSeconds scatter of single pulses around the line
 * @param degreesOfFreedom of the scatter
 */
public record WidthLine(
    double interceptSeconds,
    double slope,
    double interceptVariance,
    double slopeVariance,
    double covariance,
    double residualSdSeconds,
    double degreesOfFreedom) {
  public WidthLine {
    Checked.finite(interceptSeconds);
    Checked.finite(slope);
    Checked.uncertainty(interceptVariance);
    Checked.uncertainty(slopeVariance);
    Checked.finite(covariance);
    Checked.uncertainty(residualSdSeconds);
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException("no degrees of freedom: " + degreesOfFreedom);
    }
  }

  /** Whether the slope was fixed at 1. */
  public boolean slopeIsFixed() {
    return slope == 1 && slopeVariance == 0;
  }

  /** Standard uncertainty of the line at a true width, in seconds. */
  public double standardUncertaintySeconds(double trueSeconds) {
    double variance =
        interceptVariance
            + 2 * trueSeconds * covariance
            + trueSeconds * trueSeconds * slopeVariance;
    return Math.sqrt(Math.max(0, variance));
  }
}
