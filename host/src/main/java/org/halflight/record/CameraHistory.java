package org.halflight.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Visit;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.MovedSince;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.RunsBehind;
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

  /**
   * Whether the shutter has moved since it went back the last time.
   *
   * @param visit the visit that it came back for
   * @return empty where no visit before has a run as left, or this one has none as found
   */
  public Optional<Moved> moved(Id<Visit> visit) {
    List<RunHistory> withSpeeds =
        runsOfSpeeds().stream().filter(run -> !run.speeds().isEmpty()).toList();
    List<RunHistory> found = of(withSpeeds, visit, Phase.AS_FOUND);
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Instant came = found.get(0).visit().receivedAt();
    Optional<Visit> before =
        withSpeeds.stream()
            .filter(run -> run.run().asked().phase() == Phase.AS_LEFT)
            .map(RunHistory::visit)
            .filter(its -> !its.id().equals(visit) && !its.receivedAt().isAfter(came))
            .reduce((earlier, later) -> later);
    return before.map(
        last -> {
          List<RunHistory> left = of(withSpeeds, last.id(), Phase.AS_LEFT);
          return new Moved(
              last,
              MovedSince.of(
                  side(last(left)),
                  side(last(found)),
                  side(rested(left).orElse(last(left))),
                  side(rested(found).orElse(found.get(0)))));
        });
  }

  /**
   * Whether a shutter has moved.
   *
   * @param last the visit that it went back from
   * @param since what has happened since then
   */
  public record Moved(Visit last, MovedSince since) {}

  private static List<RunHistory> of(List<RunHistory> runs, Id<Visit> visit, Phase phase) {
    return runs.stream()
        .filter(run -> run.visit().id().equals(visit) && run.run().asked().phase() == phase)
        .toList();
  }

  private static RunHistory last(List<RunHistory> runs) {
    return runs.get(runs.size() - 1);
  }

  /** The first run with a first firing after rest. */
  private static Optional<RunHistory> rested(List<RunHistory> runs) {
    return runs.stream()
        .filter(run -> run.speeds().stream().anyMatch(s -> s.afterRestStops().isPresent()))
        .findFirst();
  }

  private static MovedSince.Side side(RunHistory run) {
    return new MovedSince.Side(
        new RunSummary(run.run().asked().phase(), run.speeds(), RunsBehind.ofRigs(run.rigs())),
        run.run().asked().conditions());
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
