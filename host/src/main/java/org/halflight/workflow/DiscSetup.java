package org.halflight.workflow;

import java.util.OptionalDouble;
import org.halflight.calibration.PrintedDisc;

/**
 * A slotted disc as the person describes it, and how it is read.
 *
 * @param disc its slots, and how well they are cut
 * @param seconds how long edges are taken
 * @param turnsAMinute its speed, where that is known from elsewhere
 * @param speedPpm standard uncertainty of that speed
 */
public record DiscSetup(
    PrintedDisc disc, double seconds, OptionalDouble turnsAMinute, double speedPpm) {
  /** Standard uncertainty of a tachometer of 0.1 %, evenly spread. */
  public static final double TACHOMETER_PPM = 577;

  public DiscSetup {
    if (!(seconds > 0 && speedPpm >= 0)
        || (turnsAMinute.isPresent() && !(turnsAMinute.getAsDouble() > 0))) {
      throw new IllegalArgumentException("a disc is read for some seconds, and it turns");
    }
  }
}
