package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.halflight.bench.FiringKeys;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.PlungerAt;
import org.halflight.session.PlungerReading;
import org.halflight.session.WindState;

/**
 * Presses of the linkage test and readings of a screw plunger, as rows of their tables. They are
 * what the person said, and may be undone: so the rows of a session are always all that stands.
 */
final class PressRows {
  private static final String OF_RUN =
      " AS it JOIN run ON run.session_id = it.session_id AND run.run_ordinal = it.run_ordinal"
          + " WHERE run.id = ? ORDER BY it.id";

  /** A press with the names of its firings. */
  private record Kept(LinkagePress press, List<FiringKey> firings) {}

  private PressRows() {}

  /** Keeps what a session has, in place of what it had. */
  static void keep(
      Connection connection,
      long sessionId,
      List<LinkagePress> presses,
      List<PlungerAt> plungers,
      Instant now)
      throws SQLException {
    Query.execute(connection, "DELETE FROM linkage_press WHERE session_id = ?", sessionId);
    Query.execute(connection, "DELETE FROM plunger_reading WHERE session_id = ?", sessionId);
    for (LinkagePress press : presses) {
      new Columns()
          .set("session_id", sessionId)
          .set("run_ordinal", press.run())
          .set("number", press.number())
          .setOptional("phase", Phase.WORDS, press.phase())
          .set("step", LinkageStep.WORDS, press.step())
          .set("wind", WindState.WORDS, press.wind())
          .set("watched", press.watched())
          .set("firings", FiringKeys.format(keys(press)))
          .set("kept_at_millis", now)
          .insert(connection, "linkage_press");
    }
    for (PlungerAt read : plungers) {
      new Columns()
          .set("session_id", sessionId)
          .set("run_ordinal", read.run())
          .setOptional("phase", Phase.WORDS, read.phase())
          .set("advance_mm", read.reading().advanceMm())
          .set("shutter_mm", read.reading().shutterMm())
          .set("kept_at_millis", now)
          .insert(connection, "plunger_reading");
    }
  }

  /** Whether a session is kept with just the presses and readings that its events tell. */
  static boolean isKept(Connection connection, SessionStart start, ReducedSession folded)
      throws SQLException {
    Object id = SessionRows.find(connection, start.key()).orElse(0L);
    List<Kept> told =
        folded.presses().stream()
            .map(press -> new Kept(press.with(List.of()), keys(press)))
            .toList();
    return told.equals(
            Query.list(
                connection,
                "SELECT * FROM linkage_press WHERE session_id = ? ORDER BY id",
                PressRows::press,
                id))
        && folded
            .plungers()
            .equals(
                Query.list(
                    connection,
                    "SELECT * FROM plunger_reading WHERE session_id = ? ORDER BY id",
                    PressRows::plunger,
                    id));
  }

  private static List<FiringKey> keys(LinkagePress press) {
    return press.firings().stream().map(FiringResult::key).toList();
  }

  /**
   * The presses of a run, in order. One that had a firing which cannot be read is left out: without
   * its light it would say something else.
   *
   * @param firings those of the run
   */
  static List<LinkagePress> presses(Connection connection, Id<Run> run, List<FiringResult> firings)
      throws SQLException {
    Map<FiringKey, FiringResult> known =
        firings.stream().collect(Collectors.toMap(FiringResult::key, Function.identity()));
    List<LinkagePress> presses = new ArrayList<>();
    for (Kept kept :
        Query.list(
            connection, "SELECT it.* FROM linkage_press" + OF_RUN, PressRows::press, run.value())) {
      if (known.keySet().containsAll(kept.firings())) {
        presses.add(kept.press().with(kept.firings().stream().map(known::get).toList()));
      }
    }
    return presses;
  }

  /** The readings of a screw plunger in a run, in order. */
  static List<PlungerAt> plungers(Connection connection, Id<Run> run) throws SQLException {
    return Query.list(
        connection, "SELECT it.* FROM plunger_reading" + OF_RUN, PressRows::plunger, run.value());
  }

  private static Kept press(ResultSet row) throws SQLException {
    Optional<Phase> phase = Row.optionalWord(row, "phase", Phase.WORDS);
    return new Kept(
        new LinkagePress(
            row.getInt("run_ordinal"),
            phase,
            row.getInt("number"),
            Row.word(row, "step", LinkageStep.WORDS),
            Row.word(row, "wind", WindState.WORDS),
            row.getBoolean("watched"),
            List.of()),
        FiringKeys.parse(Row.given(row, "firings")));
  }

  private static PlungerAt plunger(ResultSet row) throws SQLException {
    return new PlungerAt(
        row.getInt("run_ordinal"),
        Row.optionalWord(row, "phase", Phase.WORDS),
        new PlungerReading(row.getDouble("advance_mm"), row.getDouble("shutter_mm")));
  }
}
