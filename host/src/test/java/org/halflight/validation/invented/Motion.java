package org.halflight.validation.invented;

/**
 * How blades move from one end to the other.
 *
 * @param power 1 is even
 * @param braking whether they are fast at first, {@code 1 - (1 - s)^p}, and not slow, {@code s^p}
 */
public record Motion(double power, boolean braking) {
  /** As far in each part of the time. */
  public static final Motion EVEN = new Motion(1, false);

  /** The part of the way behind them after a part of the time. */
  public double way(double time) {
    return braking ? 1 - Math.pow(1 - time, power) : Math.pow(time, power);
  }

  /** The part of the time after which a part of the way is behind them. */
  public double time(double way) {
    return braking ? 1 - Math.pow(1 - way, 1 / power) : Math.pow(way, 1 / power);
  }
}
