package org.halflight.calibration;

/**
 * A reference pulse as the board made it.
 *
 * @param beginTicks when the LED was switched on
 * @param endTicks when it was switched off
 */
public record MadePulse(long beginTicks, long endTicks) {
  public MadePulse {
    if (endTicks <= beginTicks) {
      throw new IllegalArgumentException("a pulse ends after it began");
    }
  }
}
