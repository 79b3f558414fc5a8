package org.halflight.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.ShiftFinding;
import org.halflight.verdict.SpeedSummary;

/** Pairs of runs in which one speed, and only that, was moved by a known amount. */
final class ShiftPowerRuns {
  private final List<RunSummary[]> pairs = new ArrayList<>();
  private final MarkedSpeed moved;

  ShiftPowerRuns(LeafShutter shutter, MarkedSpeed moved, int firings, int count) {
    this.moved = moved;
    ModelRuns runs = new ModelRuns(shutter);
    for (int i = 0; i < count; i++) {
      pairs.add(
          new RunSummary[] {runs.next(Phase.AS_FOUND, firings), runs.next(Phase.AS_LEFT, firings)});
    }
  }

  /** The part of pairs in which the moved speed got a finding, with the speed moved by so much. */
  double part(double stops, ShiftFinding... findings) {
    List<ShiftFinding> wanted = Arrays.asList(findings);
    long found =
        pairs.stream()
            .filter(
                pair ->
                    wanted.contains(
                        RunComparison.of(pair[0], shifted(pair[1], stops))
                            .at(moved)
                            .orElseThrow()
                            .finding()))
            .count();
    return (double) found / pairs.size();
  }

  private RunSummary shifted(RunSummary run, double stops) {
    return new RunSummary(
        run.phase(),
        run.speeds().stream().map(s -> s.speed().equals(moved) ? shifted(s, stops) : s).toList());
  }

  private static SpeedSummary shifted(SpeedSummary speed, double stops) {
    return new SpeedSummary(
        speed.speed(),
        speed.reference(),
        speed.phase(),
        speed.releases(),
        Sample.of(Arrays.stream(speed.errors().values()).map(e -> e + stops).toArray()),
        speed.afterRestStops(),
        speed.tolerance(),
        HowMeasured.BY_A_MODEL);
  }
}
