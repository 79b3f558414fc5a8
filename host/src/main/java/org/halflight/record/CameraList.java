package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.job.Camera;
import org.halflight.job.DryRun;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.Source;

/** The list of cameras, gathered from three tables. */
final class CameraList {
  private record Stay(long cameraId, String jobNumber, Instant receivedAt) {}

  private record Fired(long cameraId, String rigSerial, int firings) {}

  private CameraList() {}

  /** All cameras, the one that was here last first. */
  static List<CameraLine> of(Connection connection) throws SQLException {
    Map<Long, List<Stay>> stays = new HashMap<>();
    Query.list(
            connection,
            "SELECT camera_id, job_number, received_at_millis FROM visit WHERE struck IS NULL"
                + " ORDER BY received_at_millis, id",
            row -> new Stay(row.getLong(1), row.getString(2), Instant.ofEpochMilli(row.getLong(3))))
        .forEach(stay -> stays.computeIfAbsent(stay.cameraId(), id -> new ArrayList<>()).add(stay));
    Map<Long, List<Fired>> fired = new HashMap<>();
    Query.list(
            connection,
            // Counted run by run first: that reads one index in its order and sorts nothing.
            "SELECT visit.camera_id, fired.rig_serial, sum(fired.firings) FROM"
                + " (SELECT session_id, run_ordinal, rig_serial, count(*) AS firings FROM firing"
                + " GROUP BY session_id, run_ordinal, rig_serial) AS fired"
                + " JOIN run ON run.session_id = fired.session_id"
                + " AND run.run_ordinal = fired.run_ordinal"
                + " JOIN visit ON visit.id = run.visit_id"
                + " GROUP BY visit.camera_id, fired.rig_serial",
            row -> new Fired(row.getLong(1), row.getString(2), row.getInt(3)))
        .forEach(one -> fired.computeIfAbsent(one.cameraId(), id -> new ArrayList<>()).add(one));
    Map<Long, DryRun> due = dryRuns(connection);
    // Who was named by mistake has visits, and none that counts.
    Set<Long> mistaken =
        new HashSet<>(Query.list(connection, "SELECT camera_id FROM visit", row -> row.getLong(1)));
    mistaken.removeAll(stays.keySet());
    List<CameraLine> lines = new ArrayList<>();
    for (Camera camera : CameraRows.all(connection)) {
      if (mistaken.contains(camera.id().value())) {
        continue;
      }
      lines.add(
          line(
              camera,
              stays.getOrDefault(camera.id().value(), List.of()),
              fired.getOrDefault(camera.id().value(), List.of()),
              Optional.ofNullable(due.get(camera.id().value()))));
    }
    lines.sort(
        Comparator.comparing(
                (CameraLine line) -> line.lastReceivedAt().orElse(Instant.MIN),
                Comparator.reverseOrder())
            .thenComparing(line -> line.camera().id().value(), Comparator.reverseOrder()));
    return lines;
  }

  /** Of the cameras that are here: those whose last run as left was fired wet. */
  private static Map<Long, DryRun> dryRuns(Connection connection) throws SQLException {
    record Left(long cameraId, DryRun run, boolean wet) {}
    Map<Long, DryRun> due = new HashMap<>();
    Query.list(
            connection,
            "SELECT visit.camera_id, visit.job_number, camera.label,"
                + " coalesce(run.began_at_millis, bench_session.began_at_millis,"
                + " visit.received_at_millis), coalesce(run_condition.words, '') FROM run"
                + " JOIN visit ON visit.id = run.visit_id"
                + " JOIN camera ON camera.id = visit.camera_id"
                + " JOIN bench_session ON bench_session.id = run.session_id"
                + " LEFT JOIN run_condition ON run_condition.run_id = run.id"
                + " AND run_condition.name = ?"
                + " WHERE visit.handed_back_at_millis IS NULL AND run.phase = ?"
                + " AND EXISTS (SELECT 1 FROM firing WHERE firing.session_id = run.session_id"
                + " AND firing.run_ordinal = run.run_ordinal) ORDER BY 4, run.id",
            row ->
                new Left(
                    row.getLong(1),
                    new DryRun(
                        row.getString(2).isBlank() ? row.getString(3) : row.getString(2),
                        Instant.ofEpochMilli(row.getLong(4))),
                    RunConditions.isWet(row.getString(5))),
            RunOption.WET.name(),
            Phase.WORDS.word(Phase.AS_LEFT))
        .forEach(
            left -> {
              if (left.wet()) {
                due.putIfAbsent(left.cameraId(), left.run());
              } else {
                due.remove(left.cameraId());
              }
            });
    return due;
  }

  private static CameraLine line(
      Camera camera, List<Stay> stays, List<Fired> fired, Optional<DryRun> dryRun) {
    Set<Source> sources = EnumSet.noneOf(Source.class);
    fired.forEach(one -> sources.add(Source.of(one.rigSerial())));
    return new CameraLine(
        camera,
        stays.stream().map(Stay::jobNumber).filter(number -> !number.isBlank()).toList(),
        stays.size(),
        stays.isEmpty() ? Optional.empty() : Optional.of(stays.get(stays.size() - 1).receivedAt()),
        fired.stream().mapToInt(Fired::firings).sum(),
        sources,
        dryRun);
  }
}
