package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.halflight.rig.RigMessage.Greeting;

/** Sessions, and the rigs and starts of boards that they met, as rows of two tables. */
final class SessionRows {
  private SessionRows() {}

  /** The number of a session; it gets one when it has none. */
  static long idOf(Connection connection, SessionStart start) throws SQLException {
    Optional<Long> known = find(connection, start.key());
    if (known.isPresent()) {
      return known.get();
    }
    return new Columns()
        .set("session_key", start.key())
        .set("file_name", start.fileName())
        .setOptional("began_at_millis", start.beganAt())
        .set("events_taken", 0)
        .insert(connection, "bench_session");
  }

  static Optional<Long> find(Connection connection, String key) throws SQLException {
    return Query.first(
        connection,
        "SELECT id FROM bench_session WHERE session_key = ?",
        row -> row.getLong(1),
        key);
  }

  /** How many events of its file were taken in at most. */
  static int eventsTaken(Connection connection, long sessionId) throws SQLException {
    return Query.one(
        connection,
        "SELECT events_taken FROM bench_session WHERE id = ?",
        row -> row.getInt(1),
        sessionId);
  }

  static void noteEventsTaken(Connection connection, long sessionId, int events)
      throws SQLException {
    new Columns().set("events_taken", events).update(connection, "bench_session", sessionId);
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
                row.getString("rig_serial"),
                row.getLong("boot_count"),
                row.getString("rig_kind"),
                row.getInt("channels_mask"),
                row.getLong("ticks_per_second"),
                row.getString("firmware"),
                row.getInt("protocol"),
                row.getString("reset_cause")),
        rigSerial,
        bootCount);
  }
}
