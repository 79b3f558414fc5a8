package org.halflight.time;

/**
 * Widens the low 32 bits of a tick count to 64 bits, as the tick nearest to the last whole count
 * that was seen.
 *
 * <p>Right as long as a whole count is seen more often than every 2^31 ticks (134 s at 16 MHz); a
 * rig sends one at least every 262 ms. Not safe for use by several threads.
 */
public final class TickWidening {
  private long anchorTicks;

  /**
   * @param anchorTicks a whole tick count near the ticks that will be widened
   */
  public TickWidening(long anchorTicks) {
    this.anchorTicks = anchorTicks;
  }

  /** Takes note of a whole tick count. */
  public void anchor(long ticks) {
    anchorTicks = ticks;
  }

  /**
   * @param low32 the low 32 bits, as an int of any sign
   * @return the count with these low bits that is nearest to the anchor
   */
  public long widen(int low32) {
    // The difference of the low halves, read as a signed number, is the way from the anchor.
    return anchorTicks + (low32 - (int) anchorTicks);
  }
}
