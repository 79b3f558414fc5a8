package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.halflight.job.Camera;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunPlan;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Reference;

/** Runs with their set-up, as rows of their table. */
final class RunRows {
  static final String SELECT =
      "SELECT run.*, bench_session.session_key FROM run"
          + " JOIN bench_session ON bench_session.id = run.session_id ";

  private static final String NOTED = "SELECT * FROM run_condition WHERE run_id = ?";

  private RunRows() {}

  static Run keep(Connection connection, Run run) throws SQLException {
    long sessionId = SessionRows.need(connection, run.sessionKey());
    RunSetup asked = run.asked();
    Columns columns =
        new Columns()
            .setOptional("visit_id", run.visit().map(Id::value))
            .set("session_id", sessionId)
            .set("run_ordinal", run.ordinal())
            .set("camera_label", asked.camera())
            .set("phase", Phase.WORDS, asked.phase())
            .set("dial", asked.dial())
            .set("speeds", CameraRows.speeds(asked.order()))
            .set("reference", Reference.WORDS, asked.reference())
            .set("firings_per_speed", asked.firingsPerSpeed())
            .set("checks", Word.inOrder(UntimedTest.WORDS, asked.untimedTests()))
            .set("top_speed_before_cocking", asked.customs().topSpeedBeforeCocking())
            .set("blades_shut_while_cocking", asked.customs().bladesShutWhileCocking())
            .set("rest_seconds", asked.conditions().restSeconds())
            .setOptional("began_at_millis", run.beganAt());
    Id<Run> id = run.id().isNew() ? damaged(connection, run).orElse(run.id()) : run.id();
    Run kept = run.withId(columns.keep(connection, "run", id));
    keepNoted(connection, kept);
    return kept;
  }

  /** A run that is there but cannot be read: the same run is written in its place. */
  private static Optional<Id<Run>> damaged(Connection connection, Run run) throws SQLException {
    return find(connection, run.sessionKey(), run.ordinal()).isPresent()
        ? Optional.empty()
        : Query.first(
            connection,
            "SELECT run.id FROM run JOIN bench_session ON bench_session.id = run.session_id"
                + " WHERE session_key = ? AND run_ordinal = ?",
            row -> new Id<>(row.getLong(1)),
            run.sessionKey(),
            run.ordinal());
  }

  /**
   * Writes what was noted of a run anew where some of it is damaged: what was asked in its session,
   * and what can still be read of the rest.
   */
  static void mendNoted(Connection connection, Run run, RunSetup asked, Instant now)
      throws SQLException {
    Set<String> damaged =
        new HashSet<>(
            Query.list(
                connection,
                "SELECT name FROM run_condition WHERE run_id = ?",
                row -> row.getString(1),
                run.id().value()));
    damaged.removeAll(words(connection, run.id()).keySet());
    if (damaged.isEmpty()) {
      return;
    }
    try (Quarantine aside = Quarantine.begin(connection, now)) {
      for (String name : damaged) {
        aside.move("run_condition", run.id().value(), name);
      }
    }
    Map<String, String> noted = new HashMap<>(asked.conditions().noted());
    noted.putAll(run.asked().conditions().noted());
    RunConditions conditions = new RunConditions(run.asked().conditions().restSeconds(), noted);
    keepNoted(
        connection,
        new Run(
            run.id(),
            run.visit(),
            run.sessionKey(),
            run.ordinal(),
            run.asked()
                .withConditions(conditions)
                .withCriteria(asked.criteria())
                .withMostTries(asked.mostTries())
                .withShutterKind(asked.shutter().kind()),
            run.beganAt()));
  }

  private static void keepNoted(Connection connection, Run run) throws SQLException {
    Query.execute(connection, "DELETE FROM run_condition WHERE run_id = ?", run.id().value());
    Map<String, String> words = new HashMap<>(run.asked().conditions().noted());
    words.putAll(CriteriaRows.of(run.asked()));
    for (Map.Entry<String, String> noted : words.entrySet()) {
      new Columns()
          .set("run_id", run.id().value())
          .set("name", noted.getKey())
          .set("words", noted.getValue())
          .add(connection, "run_condition");
    }
  }

  static Optional<Run> find(Connection connection, Id<Run> id) throws SQLException {
    return list(connection, "WHERE run.id = ?", id.value()).stream().findFirst();
  }

  static Optional<Run> find(Connection connection, String sessionKey, int ordinal)
      throws SQLException {
    return list(connection, "WHERE session_key = ? AND run_ordinal = ?", sessionKey, ordinal)
        .stream()
        .findFirst();
  }

  /** The runs of a visit, in the order of the work. */
  static List<Run> of(Connection connection, Id<Visit> visit) throws SQLException {
    return list(
        connection, "WHERE visit_id = ? ORDER BY run.began_at_millis, run.id", visit.value());
  }

  static List<Run> ofCamera(Connection connection, Id<Camera> camera) throws SQLException {
    return list(
        connection,
        "JOIN visit ON visit.id = run.visit_id WHERE visit.camera_id = ?"
            + " ORDER BY visit.received_at_millis, visit.id, run.began_at_millis, run.id",
        camera.value());
  }

  static List<Run> withoutCamera(Connection connection) throws SQLException {
    return list(connection, "WHERE visit_id IS NULL ORDER BY run.id");
  }

  private static List<Run> list(Connection connection, String which, Object... values)
      throws SQLException {
    return Query.list(connection, SELECT + which, row -> read(connection, row), values);
  }

  static Run read(Connection connection, ResultSet row) throws SQLException {
    Id<Run> id = new Id<>(row.getLong("id"));
    Map<String, String> words = words(connection, id);
    Map<String, String> noted = new HashMap<>(words);
    noted.keySet().removeIf(CriteriaRows::isOne);
    OptionalLong visit = Row.integer(row, "visit_id");
    return new Run(
        id,
        visit.isPresent() ? Optional.of(new Id<>(visit.getAsLong())) : Optional.empty(),
        Row.given(row, "session_key"),
        row.getInt("run_ordinal"),
        new RunSetup(
            new ShutterUnderTest(
                Row.given(row, "camera_label"),
                CriteriaRows.shutterKind(words),
                Row.given(row, "dial"),
                Row.word(row, "reference", Reference.WORDS),
                new CameraCustoms(
                    row.getBoolean("top_speed_before_cocking"),
                    row.getBoolean("blades_shut_while_cocking"))),
            Row.word(row, "phase", Phase.WORDS),
            new RunPlan(
                CameraRows.speeds(Row.given(row, "speeds")),
                row.getInt("firings_per_speed"),
                Word.readAll(UntimedTest.WORDS, Row.given(row, "checks")),
                CriteriaRows.mostTries(words)),
            new RunConditions(Row.real(row, "rest_seconds"), noted),
            CriteriaRows.read(words)),
        Row.moment(row, "began_at_millis"));
  }

  /** What was noted, and what the verdicts are about. */
  private static Map<String, String> words(Connection connection, Id<Run> run) throws SQLException {
    Map<String, String> words = new HashMap<>();
    Query.list(
            connection,
            NOTED,
            row -> Map.entry(Row.given(row, "name"), Row.given(row, "words")),
            run.value())
        .forEach(each -> words.put(each.getKey(), each.getValue()));
    return words;
  }
}
