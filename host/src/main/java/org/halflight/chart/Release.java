package org.halflight.chart;

import java.util.OptionalDouble;

/**
 * One release in a firing row.
 *
 * @param outcome what came of it
 * @param stops its error, present when and only when it is timed
 * @param firstAfterRest whether the camera had rested before; such a firing is never in the mean
 */
public record Release(ReleaseOutcome outcome, OptionalDouble stops, boolean firstAfterRest) {
  public Release {
    if (stops.isPresent() != (outcome == ReleaseOutcome.TIMED)) {
      throw new IllegalArgumentException("an error goes with a timed firing and no other");
    }
    if (stops.isPresent() && !Double.isFinite(stops.getAsDouble())) {
      throw new IllegalArgumentException("an error is a finite number");
    }
  }

  /** A firing with a time. */
  public static Release timed(double stops) {
    return new Release(ReleaseOutcome.TIMED, OptionalDouble.of(stops), false);
  }

  /** A firing with a time, the first after rest. */
  public static Release firstAfterRest(double stops) {
    return new Release(ReleaseOutcome.TIMED, OptionalDouble.of(stops), true);
  }

  /** A release without a time. */
  public static Release untimed(ReleaseOutcome outcome) {
    return new Release(outcome, OptionalDouble.empty(), false);
  }
}
