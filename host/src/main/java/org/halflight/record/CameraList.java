package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.job.Camera;
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
            "SELECT camera_id, job_number, received_at_millis FROM visit"
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
    List<CameraLine> lines = new ArrayList<>();
    for (Camera camera : CameraRows.all(connection)) {
      lines.add(
          line(
              camera,
              stays.getOrDefault(camera.id().value(), List.of()),
              fired.getOrDefault(camera.id().value(), List.of())));
    }
    lines.sort(
        Comparator.comparing(
                (CameraLine line) -> line.lastReceivedAt().orElse(Instant.MIN),
                Comparator.reverseOrder())
            .thenComparing(line -> line.camera().id().value(), Comparator.reverseOrder()));
    return lines;
  }

  private static CameraLine line(Camera camera, List<Stay> stays, List<Fired> fired) {
    Set<Source> sources = EnumSet.noneOf(Source.class);
    fired.forEach(one -> sources.add(Source.of(one.rigSerial())));
    return new CameraLine(
        camera,
        stays.stream().map(Stay::jobNumber).filter(number -> !number.isBlank()).toList(),
        stays.size(),
        stays.isEmpty() ? Optional.empty() : Optional.of(stays.get(stays.size() - 1).receivedAt()),
        fired.stream().mapToInt(Fired::firings).sum(),
        sources);
  }
}
