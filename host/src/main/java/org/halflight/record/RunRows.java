package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.job.Attitude;
import org.halflight.job.BenchSetup;
import org.halflight.job.CameraId;
import org.halflight.job.Run;
import org.halflight.job.RunId;
import org.halflight.job.VisitId;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.speeds.Reference;

/** Runs with their set-up, as rows of their table. */
final class RunRows {
  private static final String SELECT =
      "SELECT run.*, bench_session.session_key FROM run"
          + " JOIN bench_session ON bench_session.id = run.session_id ";

  private RunRows() {}

  static Run keep(Connection connection, Run run) throws SQLException {
    long sessionId =
        SessionRows.find(connection, run.sessionKey())
            .orElseThrow(
                () -> new IllegalArgumentException("no session is called " + run.sessionKey()));
    RunSetup asked = run.asked();
    Columns columns =
        new Columns()
            .setOptional("visit_id", run.visit().map(VisitId::value))
            .set("session_id", sessionId)
            .set("run_ordinal", run.ordinal())
            .set("camera_label", asked.camera())
            .set("phase", asked.phase())
            .set("dial", asked.dial())
            .set("speeds", CameraRows.speeds(asked.order()))
            .set("reference", asked.reference())
            .set("firings_per_speed", asked.firingsPerSpeed())
            .setOptional("began_at_millis", run.beganAt())
            .setOptional("rest_seconds", run.restBefore().map(Duration::toSeconds))
            .setOptional("in_camera", run.setUp().map(BenchSetup::inCamera))
            .setOptional("cells_on", run.setUp().map(BenchSetup::cellsOn))
            .setOptional("cover_on", run.setUp().map(BenchSetup::coverOn))
            .set(
                "stop_f_number",
                run.setUp().map(BenchSetup::stopFNumber).orElse(OptionalDouble.empty()))
            .setOptional("attitude", run.setUp().map(BenchSetup::attitude))
            .setOptional("still_wet", run.setUp().map(BenchSetup::stillWet));
    if (run.id().isNew()) {
      return run.withId(new RunId(columns.insert(connection, "run")));
    }
    Kept.need(columns.update(connection, "run", run.id().value()), run.id());
    return run;
  }

  static Optional<Run> find(Connection connection, RunId id) throws SQLException {
    return Query.first(connection, SELECT + "WHERE run.id = ?", RunRows::read, id.value());
  }

  static Optional<Run> find(Connection connection, String sessionKey, int ordinal)
      throws SQLException {
    return Query.first(
        connection,
        SELECT + "WHERE session_key = ? AND run_ordinal = ?",
        RunRows::read,
        sessionKey,
        ordinal);
  }

  /** The runs of a visit, in the order of the work. */
  static List<Run> of(Connection connection, VisitId visit) throws SQLException {
    return Query.list(
        connection,
        SELECT + "WHERE visit_id = ? ORDER BY run.began_at_millis, run.id",
        RunRows::read,
        visit.value());
  }

  static List<Run> of(Connection connection, CameraId camera) throws SQLException {
    return Query.list(
        connection,
        SELECT
            + "JOIN visit ON visit.id = run.visit_id WHERE visit.camera_id = ?"
            + " ORDER BY visit.received_at_millis, visit.id, run.began_at_millis, run.id",
        RunRows::read,
        camera.value());
  }

  static List<Run> withoutCamera(Connection connection) throws SQLException {
    return Query.list(connection, SELECT + "WHERE visit_id IS NULL ORDER BY run.id", RunRows::read);
  }

  private static Run read(ResultSet row) throws SQLException {
    OptionalLong visit = Row.integer(row, "visit_id");
    OptionalLong rest = Row.integer(row, "rest_seconds");
    return new Run(
        new RunId(row.getLong("id")),
        visit.isPresent() ? Optional.of(new VisitId(visit.getAsLong())) : Optional.empty(),
        row.getString("session_key"),
        row.getInt("run_ordinal"),
        new RunSetup(
            row.getString("camera_label"),
            Row.word(row, "phase", Phase.class),
            row.getString("dial"),
            CameraRows.speeds(row.getString("speeds")),
            Row.word(row, "reference", Reference.class),
            row.getInt("firings_per_speed")),
        setUp(row),
        rest.isPresent() ? Optional.of(Duration.ofSeconds(rest.getAsLong())) : Optional.empty(),
        Row.moment(row, "began_at_millis"));
  }

  private static Optional<BenchSetup> setUp(ResultSet row) throws SQLException {
    if (Row.text(row, "attitude").isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new BenchSetup(
            row.getBoolean("in_camera"),
            row.getBoolean("cells_on"),
            row.getBoolean("cover_on"),
            Row.real(row, "stop_f_number"),
            Row.word(row, "attitude", Attitude.class),
            row.getBoolean("still_wet")));
  }
}
