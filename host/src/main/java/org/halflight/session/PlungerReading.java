package org.halflight.session;

/**
 * Two readings of a screw plunger that presses the button step by step.
 *
 * @param advanceMm where the film advance unlocks, in mm of plunger travel
 * @param shutterMm where the shutter trips, likewise
 */
public record PlungerReading(double advanceMm, double shutterMm) {
  /** Pitch of the screw, in mm a turn. */
  public static final double PITCH_MM = 0.5;

  /** Divisions of a turn. */
  public static final int DIVISIONS = 20;

  public PlungerReading {
    if (!Double.isFinite(advanceMm) || !Double.isFinite(shutterMm)) {
      throw new IllegalArgumentException("no readings: " + advanceMm + ", " + shutterMm);
    }
  }

  /** Whole turns and divisions of the drum, in mm. */
  public static double millimetres(int turns, int divisions) {
    return PITCH_MM * (turns + (double) divisions / DIVISIONS);
  }

  /** How far ahead of the shutter the advance unlocks, in mm; below zero it comes after it. */
  public double gapMm() {
    return shutterMm - advanceMm;
  }
}
