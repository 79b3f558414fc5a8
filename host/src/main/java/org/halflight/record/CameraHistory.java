package org.halflight.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Visit;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.StageRuns;

/**
 * All that was fired on a camera, run by run.
 *
 * @param camera the camera
 * @param runs its runs over all visits, in order of time
 */
public record CameraHistory(Camera camera, List<RunHistory> runs) {
  public CameraHistory {
    runs = List.copyOf(runs);
  }

  /** The assemblies in stages of a visit, in order. */
  public List<AssemblyStages> assemblies(Id<Visit> visit) {
    return StageRuns.of(
        runs.stream()
            .filter(run -> run.visit().id().equals(visit))
            .map(run -> new StageRuns.StageOf(run.run().asked(), run.stage()))
            .toList());
  }

  /** The runs that are no stage of assembly: those are compared with one another alone. */
  public List<RunHistory> runsOfSpeeds() {
    return runs.stream().filter(run -> !run.run().asked().isStage()).toList();
  }

  /** Each marked speed over all visits, slow to fast; stages of assembly are left out. */
  public List<SpeedDrift> drifts() {
    Map<MarkedSpeed, List<SpeedDrift.Point>> bySpeed = new LinkedHashMap<>();
    for (RunHistory run : runsOfSpeeds()) {
      for (SpeedSummary summary : run.speeds()) {
        bySpeed
            .computeIfAbsent(summary.speed(), speed -> new ArrayList<>())
            .add(new SpeedDrift.Point(run.visit(), run.run(), summary));
      }
    }
    return bySpeed.entrySet().stream()
        .map(entry -> new SpeedDrift(entry.getKey(), entry.getValue()))
        .sorted(Comparator.comparingDouble((SpeedDrift drift) -> -drift.speed().literalSeconds()))
        .toList();
  }
}
