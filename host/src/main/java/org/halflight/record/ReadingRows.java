package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.LightReading;
import org.halflight.session.Phase;

/** Readings of the light with the shutter at rest, as rows of their table. */
final class ReadingRows {
  private static final String WHERE = " WHERE rig_serial = ? AND boot_count = ? AND end_ticks = ?";

  private ReadingRows() {}

  /**
   * Keeps a reading; one that is known stays as it is.
   *
   * @return whether it is new
   */
  static boolean keep(Connection connection, long sessionId, LightReading reading, Instant now)
      throws SQLException {
    if (isKnown(connection, reading)) {
      return false;
    }
    Optional<Long> damaged = idOf(connection, reading);
    if (damaged.isPresent()) {
      try (Quarantine aside = Quarantine.begin(connection, now)) {
        aside.move("light_reading", damaged.get());
      }
    }
    new Columns()
        .set("rig_serial", reading.rigSerial())
        .set("boot_count", reading.bootCount())
        .set("end_ticks", reading.ticks())
        .set("session_id", sessionId)
        .set("run_ordinal", reading.run())
        .setOptional("phase", Phase.WORDS, reading.phase())
        .set("read_of", LightReading.What.WORDS, reading.what())
        .set("stop", reading.at())
        .set("opening", reading.opening())
        .set("counts", reading.counts())
        .set("uncertainty_counts", reading.standardUncertaintyCounts())
        .set("blocks", reading.blocks())
        .set("dark_counts", reading.darkCounts())
        .set("full_counts", reading.fullCounts())
        .set("kept_at_millis", now)
        .insert(connection, "light_reading");
    return true;
  }

  static boolean isKnown(Connection connection, LightReading reading) throws SQLException {
    return Query.first(
            connection,
            "SELECT * FROM light_reading" + WHERE,
            row -> true,
            reading.rigSerial(),
            reading.bootCount(),
            reading.ticks())
        .isPresent();
  }

  /** The number of a reading, whether its row is damaged or not. */
  private static Optional<Long> idOf(Connection connection, LightReading reading)
      throws SQLException {
    return Query.first(
        connection,
        "SELECT id FROM light_reading" + WHERE,
        row -> row.getLong(1),
        reading.rigSerial(),
        reading.bootCount(),
        reading.ticks());
  }

  /** The readings of a run, in the order in which they were kept. */
  static List<LightReading> of(Connection connection, Id<Run> run) throws SQLException {
    return Query.list(
        connection,
        "SELECT light_reading.* FROM light_reading"
            + " JOIN run ON run.session_id = light_reading.session_id"
            + " AND run.run_ordinal = light_reading.run_ordinal"
            + " WHERE run.id = ? ORDER BY light_reading.id",
        ReadingRows::read,
        run.value());
  }

  private static LightReading read(ResultSet row) throws SQLException {
    Optional<Phase> phase = Row.optionalWord(row, "phase", Phase.WORDS);
    return new LightReading(
        row.getInt("run_ordinal"),
        phase,
        Row.word(row, "read_of", LightReading.What.WORDS),
        Row.given(row, "stop"),
        row.getBoolean("opening"),
        row.getDouble("counts"),
        row.getDouble("uncertainty_counts"),
        row.getInt("blocks"),
        Row.real(row, "dark_counts"),
        Row.real(row, "full_counts"),
        Row.given(row, "rig_serial"),
        row.getLong("boot_count"),
        row.getLong("end_ticks"));
  }
}
