package org.halflight.calibration;

import java.util.Objects;
import org.halflight.signal.Channel;

/**
 * What one channel saw of one reference pulse. The board itself stamped the pulse and the edges, so
 * the rate of its clock is in neither delay.
 *
 * @param channel which saw it
 * @param level threshold of the channel as a fraction of the LED's light less dark
 * @param trueSeconds the LED was on for
 * @param riseDelaySeconds from LED on to the stamp of the rising edge
 * @param fallDelaySeconds from LED off to the stamp of the falling edge
 */
public record SeenPulse(
    Channel channel,
    double level,
    double trueSeconds,
    double riseDelaySeconds,
    double fallDelaySeconds) {
  public SeenPulse {
    Objects.requireNonNull(channel);
    if (!(level > 0 && level < 1) || !(trueSeconds > 0)) {
      throw new IllegalArgumentException("not a pulse at a level: " + level + ", " + trueSeconds);
    }
  }

  /** How much too long the channel saw it. */
  public double excessSeconds() {
    return fallDelaySeconds - riseDelaySeconds;
  }

  /** How long the channel saw it. */
  public double measuredSeconds() {
    return trueSeconds + excessSeconds();
  }
}
