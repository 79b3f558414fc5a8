package org.halflight.chart;

import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.SpeedSummary;

/**
 * One marked speed of a speed map.
 *
 * @param speed as engraved
 * @param tolerance what counts as right while no run says otherwise
 * @param asFound the run before work, where there is one
 * @param asLeft the run after work, where there is one
 */
public record SpeedColumn(
    MarkedSpeed speed,
    Tolerance tolerance,
    Optional<SpeedSummary> asFound,
    Optional<SpeedSummary> asLeft) {
  Stream<SpeedSummary> runs() {
    return Stream.concat(asFound.stream(), asLeft.stream());
  }

  Optional<SpeedSummary> run(boolean found) {
    return found ? asFound : asLeft;
  }

  /** What counts as right in one of the runs. Each has its own firings and so its unsure zone. */
  Limits limits(boolean found) {
    return run(found).or(() -> run(!found)).map(Limits::of).orElseGet(() -> Limits.of(tolerance));
  }
}
