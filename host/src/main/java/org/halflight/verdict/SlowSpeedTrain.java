package org.halflight.verdict;

import org.halflight.speeds.MarkedSpeed;

/**
 * Which marked speeds the slow-speed train governs. From 1/15 (on older dials 1/10) to the slow end
 * it is engaged on most leaf shutters: common practice, no source; a shutter may be built
 * otherwise.
 */
public final class SlowSpeedTrain {
  /** Lies between 1/25, the slowest setting without a train on older dials, and 1/15. */
  private static final double FROM_SECONDS = 1.0 / 20;

  private SlowSpeedTrain() {}

  /** Whether the train is taken to govern a speed. */
  public static boolean governs(MarkedSpeed speed) {
    return speed.literalSeconds() >= FROM_SECONDS;
  }
}
