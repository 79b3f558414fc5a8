package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.job.Camera;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.job.Detail;
import org.halflight.job.Finding;
import org.halflight.job.Id;
import org.halflight.job.Visit;

/** Visits with their two lists, as rows of two tables. */
final class VisitRows {
  private static final String INTAKE = "intake";
  private static final String HAND_BACK = "hand-back";

  /** The table of the answers, by which corrections of them are known. */
  static final String CHECKS = "visit_check";

  private VisitRows() {}

  static Visit keep(Connection connection, Visit visit, Instant now) throws SQLException {
    Columns columns =
        new Columns()
            .set("camera_id", visit.camera().value())
            .set("job_number", visit.jobNumber())
            .set("received_at_millis", visit.receivedAt())
            .setOptional("handed_back_at_millis", visit.handedBackAt())
            .set(Detail.OF_VISIT, visit.details());
    Optional<Visit> before = find(connection, visit.id());
    Visit kept = visit.withId(columns.keep(connection, "visit", visit.id(), now));
    Query.execute(connection, "DELETE FROM visit_check WHERE visit_id = ?", kept.id().value());
    keep(connection, kept.id(), INTAKE, kept.intake());
    keep(connection, kept.id(), HAND_BACK, kept.handBack());
    if (before.isPresent()) {
      corrected(connection, visit.id(), INTAKE, before.get().intake(), visit.intake(), now);
      corrected(connection, visit.id(), HAND_BACK, before.get().handBack(), visit.handBack(), now);
    }
    return kept;
  }

  static Optional<Visit> find(Connection connection, Id<Visit> id) throws SQLException {
    return list(connection, "WHERE id = ?", id.value()).stream().findFirst();
  }

  /** A visit that was begun by mistake no longer counts, or does again. */
  static void strike(Connection connection, Id<Visit> id, boolean off, Instant now)
      throws SQLException {
    new Columns().setIf("struck", off).keep(connection, "visit", id, now);
  }

  /** The visits of a camera, the first one first. */
  static List<Visit> of(Connection connection, Id<Camera> camera) throws SQLException {
    return list(connection, "WHERE struck IS NULL AND camera_id = ?", camera.value());
  }

  /** The visits that were open at a moment, the first one first. */
  static List<Visit> openAt(Connection connection, Instant at) throws SQLException {
    return list(
        connection,
        "WHERE received_at_millis <= ?1 AND coalesce(handed_back_at_millis > ?1, 1)",
        at.toEpochMilli());
  }

  private static List<Visit> list(Connection connection, String where, long value)
      throws SQLException {
    List<Visit> visits = new ArrayList<>();
    for (Visit bare :
        Query.list(
            connection,
            "SELECT * FROM visit " + where + " ORDER BY received_at_millis, id",
            VisitRows::readBare,
            value)) {
      visits.add(
          bare.with(
              checklist(connection, bare.id(), INTAKE),
              checklist(connection, bare.id(), HAND_BACK)));
    }
    return visits;
  }

  static Visit readBare(ResultSet row) throws SQLException {
    return new Visit(
        new Id<>(row.getLong("id")),
        new Id<>(row.getLong("camera_id")),
        Row.given(row, "job_number"),
        Row.moment(row, "received_at_millis").orElseThrow(),
        Row.moment(row, "handed_back_at_millis"),
        Checklist.EMPTY,
        Checklist.EMPTY,
        Columns.details(row, Detail.OF_VISIT));
  }

  /** An answer that was changed, and not only given, is kept. */
  private static void corrected(
      Connection connection,
      Id<Visit> visit,
      String list,
      Checklist before,
      Checklist after,
      Instant now)
      throws SQLException {
    for (Map.Entry<CheckItem, Finding> each : before.findings().entrySet()) {
      Finding was = each.getValue();
      if (!was.equals(Finding.NOT_TESTED) && !was.equals(after.of(each.getKey()))) {
        Corrections.keep(
            connection,
            CHECKS,
            visit.value(),
            list + '/' + CheckItem.WORDS.word(each.getKey()),
            (CheckState.WORDS.word(was.state()) + ' ' + was.note()).strip(),
            now);
      }
    }
  }

  /** Only what was answered has a row. */
  private static void keep(Connection connection, Id<Visit> visit, String list, Checklist checklist)
      throws SQLException {
    for (Map.Entry<CheckItem, Finding> each : checklist.findings().entrySet()) {
      if (!each.getValue().equals(Finding.NOT_TESTED)) {
        new Columns()
            .set("visit_id", visit.value())
            .set("list", list)
            .set("item", CheckItem.WORDS, each.getKey())
            .set("state", CheckState.WORDS, each.getValue().state())
            .set("note", each.getValue().note())
            .add(connection, "visit_check");
      }
    }
  }

  private static Checklist checklist(Connection connection, Id<Visit> visit, String list)
      throws SQLException {
    Map<CheckItem, Finding> findings = new EnumMap<>(CheckItem.class);
    Query.list(
        connection,
        "SELECT * FROM visit_check WHERE visit_id = ? AND list = ?",
        row -> findings.put(item(row), finding(row)),
        visit.value(),
        list);
    return new Checklist(findings);
  }

  static CheckItem item(ResultSet row) throws SQLException {
    return Row.word(row, "item", CheckItem.WORDS);
  }

  static Finding finding(ResultSet row) throws SQLException {
    return new Finding(Row.word(row, "state", CheckState.WORDS), Row.given(row, "note"));
  }
}
