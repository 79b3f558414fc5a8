package org.halflight.record;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;
import static java.util.stream.Collectors.toSet;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SinceAdjustment;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.StageRuns;

/** Gathers the history of a camera. */
final class Histories {
  private Histories() {}

  static Optional<CameraHistory> of(Connection connection, Id<Camera> id) throws SQLException {
    Optional<Camera> camera = CameraRows.find(connection, id);
    if (camera.isEmpty()) {
      return Optional.empty();
    }
    Map<Id<Visit>, Visit> visits = new HashMap<>();
    VisitRows.of(connection, id).forEach(visit -> visits.put(visit.id(), visit));
    List<RunHistory> runs = new ArrayList<>();
    for (Run run : RunRows.ofCamera(connection, id)) {
      Visit visit = visits.get(run.visit().orElseThrow());
      // The row of a visit may be damaged; that is said where it was read.
      if (visit != null) {
        runs.add(history(connection, run, visit));
      }
    }
    return Optional.of(new CameraHistory(camera.get(), runs));
  }

  private static RunHistory history(Connection connection, Run run, Visit visit)
      throws SQLException {
    List<FiringResult> firings =
        FiringRows.of(connection, run.id()).stream().map(KeptFiring::result).toList();
    Set<Source> sources = EnumSet.noneOf(Source.class);
    firings.forEach(firing -> sources.add(Source.of(firing.key().rigSerial())));
    List<SpeedSummary> speeds =
        RunSummary.of(
                sinceLastMark(connection, run, visit, firings),
                run.asked()::tolerance,
                DecisionBasis.of(run.asked(), RigKnowledge.UNCALIBRATED))
            .stream()
            .flatMap(phase -> phase.speeds().stream())
            .toList();
    return new RunHistory(
        visit,
        run,
        firings.size(),
        sources,
        firings.stream().map(firing -> firing.key().rigSerial()).collect(toSet()),
        speeds,
        tried(connection, run, firings),
        StageRuns.stage(run.asked(), firings));
  }

  private static List<ExtraTest> tried(Connection connection, Run run, List<FiringResult> firings)
      throws SQLException {
    Evidence all =
        new Evidence(
            firings,
            ReadingRows.of(connection, run.id()),
            PressRows.presses(connection, run.id(), firings),
            PressRows.plungers(connection, run.id()));
    return ExtraTests.of(all, List.of(run.asked()));
  }

  /** What was tried beside the marked speeds in the runs of a visit that are not of adjusting. */
  static List<ExtraTest> tried(Connection connection, Id<Visit> visit) throws SQLException {
    List<ExtraTest> tried = new ArrayList<>();
    for (Run run : RunRows.of(connection, visit)) {
      if (run.asked().phase() != Phase.ADJUSTING) {
        tried.addAll(
            tried(
                connection,
                run,
                FiringRows.of(connection, run.id()).stream().map(KeptFiring::result).toList()));
      }
    }
    return tried;
  }

  /** Of each speed of an adjusting run, what follows the last mark. */
  private static List<FiringResult> sinceLastMark(
      Connection connection, Run run, Visit visit, List<FiringResult> firings) throws SQLException {
    if (run.asked().phase() != Phase.ADJUSTING) {
      return firings;
    }
    int last =
        WorkRows.of(connection, visit.id()).stream()
            .filter(entry -> entry.run().equals(Optional.of(run.id())))
            .mapToInt(entry -> entry.afterFiring().orElse(0))
            .max()
            .orElse(0);
    return firings.stream()
        .collect(groupingBy(FiringResult::setting, LinkedHashMap::new, toList()))
        .values()
        .stream()
        .flatMap(ofOneSpeed -> SinceAdjustment.of(ofOneSpeed, last).stream())
        .toList();
  }
}
