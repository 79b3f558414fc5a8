package org.halflight.session;

import java.util.List;
import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.stats.Sample;

/**
 * What a marked speed of this shutter reads: its own firings, or its marking where there are none.
 *
 * @param middleStops median of the effective times, in stops against one second
 * @param reachStops how far a firing may lie from it and still fit
 * @param firings how many it rests on; 0 for a marking
 */
record Readings(double middleStops, double reachStops, int firings) {
  /**
   * A firing this near to the readings of a speed fits them, in stops: sound firings of one speed
   * scatter by less. Common practice, no source.
   */
  static final double LEAST_REACH_STOPS = 0.15;

  /**
   * However much a speed scatters, a firing further off than this does not fit it, in stops: under
   * half of the stop that lies between neighbours.
   */
  static final double GREATEST_REACH_STOPS = 0.4;

  /** How near to a marking a firing fits it, in stops: the usual tolerance, trade custom. */
  static final double MARKING_REACH_STOPS = 1 / 3.0;

  private static final double SCATTERS = 3;

  /** The readings that some timed firings make; empty where there are none. */
  static Optional<Readings> of(List<FiringResult> timed) {
    if (timed.isEmpty()) {
      return Optional.empty();
    }
    Sample sample =
        Sample.of(timed.stream().map(r -> stops(r.effectiveSeconds().orElseThrow())).toList());
    double scatter = sample.sd().known().orElse(0.0);
    return Optional.of(
        new Readings(
            sample.median().get(),
            Math.min(GREATEST_REACH_STOPS, Math.max(LEAST_REACH_STOPS, SCATTERS * scatter)),
            timed.size()));
  }

  static Readings ofMarking(MarkedSpeed speed, Reference reference) {
    return new Readings(stops(speed.seconds(reference)), MARKING_REACH_STOPS, 0);
  }

  boolean fit(double effectiveSeconds) {
    return distanceStops(effectiveSeconds) <= reachStops + 1e-9;
  }

  double distanceStops(double effectiveSeconds) {
    return Math.abs(stops(effectiveSeconds) - middleStops);
  }

  private static double stops(double seconds) {
    return Stops.between(seconds, 1);
  }
}
