package org.halflight.calibration;

/**
 * A disc with a slot between two radial edges, turning between lamp and sensor: a shutter whose
 * effective time is known. Every point of the light is uncovered for the same part of a turn,
 * {@code angle / 360}, however wide the light is, so the effective time is that part of the turn
 * even where the ramps are slow; only the slot must be wide enough to free the whole light once.
 *
 * @param slotDegrees between the edges
 * @param slotStandardUncertaintyDegrees of that, as cut
 */
public record SlottedDisc(double slotDegrees, double slotStandardUncertaintyDegrees) {
  public SlottedDisc {
    if (!(slotDegrees > 0 && slotDegrees < 360 && slotStandardUncertaintyDegrees >= 0)) {
      throw new IllegalArgumentException("not a slot: " + slotDegrees + " degrees");
    }
  }

  /**
   * The effective time.
   *
   * @param turnSeconds of one turn; measured by the rig, from one passing to the next, it makes the
   *     comparison independent of the rig's clock
   */
  public double effectiveSeconds(double turnSeconds) {
    if (!(turnSeconds > 0)) {
      throw new IllegalArgumentException("not a turn: " + turnSeconds + " s");
    }
    return turnSeconds * slotDegrees / 360;
  }

  /** The effective time at a known speed, in turns a minute. */
  public double effectiveSecondsAt(double turnsAMinute) {
    return effectiveSeconds(60 / turnsAMinute);
  }

  /** Standard uncertainty of the effective time from the angle alone, as a share of it. */
  public double standardUncertaintyShare() {
    return slotStandardUncertaintyDegrees / slotDegrees;
  }
}
