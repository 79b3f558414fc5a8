package org.halflight.signal;

/**
 * A time for which a channel was high.
 *
 * @param startTicks ticks of the rise
 * @param endTicks ticks of the fall, not before the rise
 */
public record Pulse(long startTicks, long endTicks) {
  public Pulse {
    if (endTicks < startTicks) {
      throw new IllegalArgumentException(
          "a pulse ends at its start or later: " + startTicks + ", " + endTicks);
    }
  }

  /** Its length in ticks. */
  public long ticks() {
    return endTicks - startTicks;
  }

  /** How much of it lies between two times, in ticks. */
  public long ticksWithin(long fromTicks, long toTicks) {
    return Math.max(0, Math.min(endTicks, toTicks) - Math.max(startTicks, fromTicks));
  }
}
