package org.halflight.profile;

/**
 * How long a channel takes from the crossing of its level to the time stamp, the lag of the front
 * end left out.
 *
 * @param riseSeconds on rising light
 * @param riseStandardUncertaintySeconds of that
 * @param fallSeconds on falling light
 * @param fallStandardUncertaintySeconds of that
 */
public record EdgeDelays(
    double riseSeconds,
    double riseStandardUncertaintySeconds,
    double fallSeconds,
    double fallStandardUncertaintySeconds) {
  public EdgeDelays {
    Checked.finite(riseSeconds);
    Checked.finite(fallSeconds);
    Checked.uncertainty(riseStandardUncertaintySeconds);
    Checked.uncertainty(fallStandardUncertaintySeconds);
  }

  /** How much too long a pulse comes out at this channel. */
  public double widthOffsetSeconds() {
    return fallSeconds - riseSeconds;
  }

  /** Standard uncertainty of {@link #widthOffsetSeconds}, both edges taken as independent. */
  public double widthStandardUncertaintySeconds() {
    return Math.hypot(riseStandardUncertaintySeconds, fallStandardUncertaintySeconds);
  }
}
