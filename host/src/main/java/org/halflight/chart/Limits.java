package org.halflight.chart;

import org.halflight.speeds.Tolerance;
import org.halflight.verdict.SpeedSummary;

/**
 * What counts as right at a speed, and how far around each limit nobody can tell.
 *
 * @param tolerance the limits
 * @param unsureBelowStops how far below a limit its unsure zone begins; 0 where it is not known
 * @param unsureAboveStops how far above a limit it ends; 0 where it is not known
 */
record Limits(Tolerance tolerance, double unsureBelowStops, double unsureAboveStops) {
  /** Before there are firings. */
  static Limits of(Tolerance tolerance) {
    return new Limits(tolerance, 0, 0);
  }

  /** The limits of a speed with its guard band; none before there are two firings. */
  static Limits of(SpeedSummary speed) {
    // Where the truth may lie further below the mean, the mean must be further above a limit.
    return new Limits(
        speed.tolerance(), speed.guardAboveStops().orElse(0), speed.guardBelowStops().orElse(0));
  }

  double lowStops() {
    return -tolerance.fastStops();
  }

  double highStops() {
    return tolerance.slowStops();
  }

  boolean isUnsure() {
    return unsureBelowStops > 0 && unsureAboveStops > 0;
  }
}
