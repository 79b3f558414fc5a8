package org.halflight.chart;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.SpeedSummary;

/**
 * One marked speed of a speed map.
 *
 * @param speed as engraved
 * @param tolerance what counts as right while no run says otherwise
 * @param runs what its firings came to in each phase that fired it
 */
public record SpeedColumn(MarkedSpeed speed, Tolerance tolerance, Map<Phase, SpeedSummary> runs) {
  public SpeedColumn {
    runs = Map.copyOf(runs);
  }

  Stream<SpeedSummary> all() {
    return runs.values().stream();
  }

  Optional<SpeedSummary> run(Phase phase) {
    return Optional.ofNullable(runs.get(phase));
  }

  /** What counts as right in one of the runs. Each has its own firings and so its unsure zone. */
  Limits limits(Phase phase) {
    return run(phase)
        .or(() -> Stream.of(Phase.values()).flatMap(other -> run(other).stream()).findFirst())
        .map(Limits::of)
        .orElseGet(() -> Limits.of(tolerance));
  }
}
