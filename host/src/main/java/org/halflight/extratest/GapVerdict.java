package org.halflight.extratest;

import org.halflight.session.GapLimits;
import org.halflight.session.PlungerReading;

/** How the stroke between advance and shutter is, by a screw plunger and the limits asked for. */
public enum GapVerdict {
  /** Within the limits. */
  WITHIN,
  /** The advance unlocks too far ahead of the shutter. */
  TOO_FAR_AHEAD,
  /** It unlocks too late. */
  TOO_LATE,
  /** A limit is nearer than the plunger can be read. */
  TOO_CLOSE_TO_CALL;

  /** How far off the difference of two readings may be, in mm: half a division each. */
  public static final double PLUS_MINUS_MM = PlungerReading.PITCH_MM / PlungerReading.DIVISIONS;

  /** How a stroke is, in mm; below zero the advance comes after the shutter. */
  public static GapVerdict of(double gapMm, GapLimits limits) {
    if (gapMm - PLUS_MINUS_MM > limits.mostMm()) {
      return TOO_FAR_AHEAD;
    }
    if (gapMm + PLUS_MINUS_MM < limits.leastMm()) {
      return TOO_LATE;
    }
    return gapMm - PLUS_MINUS_MM >= limits.leastMm() && gapMm + PLUS_MINUS_MM <= limits.mostMm()
        ? WITHIN
        : TOO_CLOSE_TO_CALL;
  }

  /** Whether it is plainly outside. */
  public boolean isOutside() {
    return this == TOO_FAR_AHEAD || this == TOO_LATE;
  }
}
