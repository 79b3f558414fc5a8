package org.halflight.chart;

import java.util.Optional;

/**
 * One marked speed of a speed map.
 *
 * @param label as engraved
 * @param tolerance what counts as right
 * @param asFound the run before work, where there is one
 * @param asLeft the run after work, where there is one
 * @param asLeftTolerance what counts as right there
 */
public record SpeedColumn(
    String label,
    Tolerance tolerance,
    Optional<RunAtSpeed> asFound,
    Optional<RunAtSpeed> asLeft,
    Tolerance asLeftTolerance) {
  /** Both runs are held against the same. */
  public SpeedColumn(
      String label,
      Tolerance tolerance,
      Optional<RunAtSpeed> asFound,
      Optional<RunAtSpeed> asLeft) {
    this(label, tolerance, asFound, asLeft, tolerance);
  }

  /** What counts as right in one of the runs. */
  Tolerance tolerance(boolean found) {
    return found ? tolerance : asLeftTolerance;
  }
}
