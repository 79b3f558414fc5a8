package org.halflight.calibration;

import java.util.List;
import java.util.Optional;
import org.halflight.profile.ClockRate;

/**
 * The rate of a clock from both sides of the same pings.
 *
 * @param received from the stamps that are never early
 * @param sent from those that are never late
 */
public record ClockPair(ClockFit.Outcome received, ClockFit.Outcome sent) {
  /** Fits both sides; empty where either has too few stamps. */
  public static Optional<ClockPair> of(List<ClockStamp> received, List<ClockStamp> sent) {
    ClockFit.Outcome late = ClockFit.of(received, StampSide.HOST_LATE);
    ClockFit.Outcome early = ClockFit.of(sent, StampSide.HOST_EARLY);
    return late instanceof ClockFit.TooFew || early instanceof ClockFit.TooFew
        ? Optional.empty()
        : Optional.of(new ClockPair(late, early));
  }

  /**
   * The rate of both together, weighted by their uncertainties; empty where a side contradicts
   * itself or the sides contradict each other.
   *
   * @param hostStandardUncertaintyPpm of the clock of the host
   */
  public Optional<ClockRate> rate(double hostStandardUncertaintyPpm) {
    if (!(received instanceof ClockFit.Fitted late) || !(sent instanceof ClockFit.Fitted early)) {
      return Optional.empty();
    }
    double u1 = Math.max(1e-6, late.fit().standardUncertaintyPpm());
    double u2 = Math.max(1e-6, early.fit().standardUncertaintyPpm());
    double apart = Math.abs(late.fit().fastPpm() - early.fit().fastPpm());
    if (apart > 4 * Math.hypot(u1, u2)) {
      return Optional.empty();
    }
    double w1 = 1 / (u1 * u1);
    double w2 = 1 / (u2 * u2);
    double mean = (w1 * late.fit().fastPpm() + w2 * early.fit().fastPpm()) / (w1 + w2);
    // Where they lie further apart than they should, the distance counts.
    double own = Math.max(1 / Math.sqrt(w1 + w2), apart / 2);
    return Optional.of(
        new ClockRate(
            mean,
            Math.hypot(own, hostStandardUncertaintyPpm),
            Double.POSITIVE_INFINITY,
            ClockRate.Source.HOST_CLOCK));
  }
}
