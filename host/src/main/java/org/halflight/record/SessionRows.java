package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.halflight.rig.RigMessage.Greeting;

/** Sessions, and the rigs and starts of boards that they met, as rows of two tables. */
final class SessionRows {
  private SessionRows() {}

  /** The number of a session; it gets one when it has none. */
  static long idOf(Connection connection, SessionStart start) throws SQLException {
    Optional<Long> known = find(connection, start.key());
    Columns columns =
        new Columns()
            .set("session_key", start.key())
            .set("file_name", start.fileName())
            .setOptional("began_at_millis", start.beganAt())
            .set("events_taken", 0)
            .set("bytes_taken", 0);
    if (known.isEmpty()) {
      return columns.insert(connection, "bench_session");
    }
    if (imported(connection, known.get()).isEmpty()) {
      // Its row is damaged; all in it comes from the session itself.
      columns.update(connection, "bench_session", known.get());
    }
    return known.get();
  }

  static Optional<Long> find(Connection connection, String key) throws SQLException {
    return Query.first(
        connection,
        "SELECT id FROM bench_session WHERE session_key = ?",
        row -> row.getLong(1),
        key);
  }

  /** The number of a session that has begun; another is a caller's mistake. */
  static long need(Connection connection, String key) throws SQLException {
    return find(connection, key)
        .orElseThrow(() -> new IllegalArgumentException("no session is called " + key));
  }

  /**
   * How much of the file of a session was taken in at most.
   *
   * @param events its events
   * @param bytes its length, 0 where only firings came, as they settled
   */
  record Imported(int events, long bytes) {}

  /** How much of it was taken in; empty where its row is damaged. */
  static Optional<Imported> imported(Connection connection, long sessionId) throws SQLException {
    return Query.first(
        connection,
        "SELECT * FROM bench_session WHERE id = ?",
        row -> new Imported(row.getInt("events_taken"), row.getLong("bytes_taken")),
        sessionId);
  }

  /** How many bytes were taken in of the files of all sessions, by their keys. */
  static Map<String, Long> bytesTaken(Connection connection) throws SQLException {
    Map<String, Long> bytes = new HashMap<>();
    Query.list(
        connection,
        "SELECT * FROM bench_session",
        row -> bytes.put(Row.given(row, "session_key"), row.getLong("bytes_taken")));
    return bytes;
  }

  /** Notes how much of a session was taken in. Its row was read in the same transaction. */
  static void noteTaken(Connection connection, long sessionId, Imported taken) throws SQLException {
    new Columns()
        .set("events_taken", taken.events())
        .set("bytes_taken", taken.bytes())
        .update(connection, "bench_session", sessionId);
  }

  /** Keeps what a rig said of itself at a start of its board. */
  static void keep(Connection connection, Greeting greeting) throws SQLException {
    new Columns()
        .set("rig_serial", greeting.serial())
        .set("boot_count", greeting.bootCount())
        .set("rig_kind", greeting.kind())
        .set("channels_mask", greeting.channels())
        .set("ticks_per_second", greeting.ticksPerSecond())
        .set("firmware", greeting.firmware())
        .set("protocol", greeting.protocol())
        .set("reset_cause", greeting.resetCause())
        .replace(connection, "rig_start");
  }

  static Optional<RigStart> rigStart(Connection connection, String rigSerial, long bootCount)
      throws SQLException {
    return Query.first(
        connection,
        "SELECT * FROM rig_start WHERE rig_serial = ? AND boot_count = ?",
        row ->
            new RigStart(
                Row.given(row, "rig_serial"),
                row.getLong("boot_count"),
                Row.given(row, "rig_kind"),
                row.getInt("channels_mask"),
                row.getLong("ticks_per_second"),
                Row.given(row, "firmware"),
                row.getInt("protocol"),
                Row.given(row, "reset_cause")),
        rigSerial,
        bootCount);
  }
}
