package org.halflight.calibration;

import org.halflight.signal.Channel;

/**
 * What one channel saw of one reference pulse. The board itself stamped the pulse and the edges, so
 * the rate of its clock is in neither delay.
 *
 * @param channel which saw it
 * @param riseLevel where the comparator switches on rising light, as a fraction of the LED's light
 *     less dark
 * @param fallLevel the same on falling light; lower by the hysteresis
 * @param trueSeconds the LED was on for
 * @param riseDelaySeconds from LED on to the stamp of the rising edge
 * @param fallDelaySeconds from LED off to the stamp of the falling edge
 */
public record SeenPulse(
    Channel channel,
    double riseLevel,
    double fallLevel,
    double trueSeconds,
    double riseDelaySeconds,
    double fallDelaySeconds) {
  public SeenPulse {
    if (!(riseLevel > 0 && riseLevel < 1 && fallLevel > 0 && fallLevel < 1) || !(trueSeconds > 0)) {
      throw new IllegalArgumentException(
          "not a pulse at a level: " + riseLevel + ", " + fallLevel + ", " + trueSeconds);
    }
  }

  /** One seen at the same level both ways: no hysteresis is known. */
  public SeenPulse(
      Channel channel,
      double level,
      double trueSeconds,
      double riseDelaySeconds,
      double fallDelaySeconds) {
    this(channel, level, level, trueSeconds, riseDelaySeconds, fallDelaySeconds);
  }

  /** The level in the mean of both ways. */
  public double level() {
    return (riseLevel + fallLevel) / 2;
  }

  /** By how many time constants of a one-pole lag it comes out longer. */
  public double stretch() {
    return LagEstimate.stretch(riseLevel, fallLevel);
  }

  /** How much too long the channel saw it. */
  public double excessSeconds() {
    return fallDelaySeconds - riseDelaySeconds;
  }
}
