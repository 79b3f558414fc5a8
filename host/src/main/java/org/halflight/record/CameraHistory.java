package org.halflight.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.halflight.job.Camera;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.SpeedSummary;

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

  /** Each marked speed over all visits, slow to fast. */
  public List<SpeedDrift> drifts() {
    Map<MarkedSpeed, List<SpeedDrift.Point>> bySpeed = new LinkedHashMap<>();
    for (RunHistory run : runs) {
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
