package org.halflight.time;

/**
 * How fast a board counts.
 *
 * @param ticksPerSecond ticks in one second of rig time, above zero
 */
public record TickRate(long ticksPerSecond) {
  /** The rate of a board with a 16 MHz clock: 62.5 ns a tick. */
  public static final TickRate BOARD_16_MHZ = new TickRate(16_000_000);

  public TickRate {
    if (ticksPerSecond <= 0) {
      throw new IllegalArgumentException("tick rate must be above zero: " + ticksPerSecond);
    }
  }

  /** The length of a span of ticks in seconds of rig time. */
  public double seconds(long ticks) {
    return (double) ticks / ticksPerSecond;
  }

  /** The length of a span of ticks in milliseconds of rig time. */
  public double millis(long ticks) {
    return 1e3 * ticks / ticksPerSecond;
  }

  /** The span of ticks nearest to a length in seconds. */
  public long ticks(double seconds) {
    return Math.round(seconds * ticksPerSecond);
  }
}
