package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.halflight.job.Correction;
import org.jspecify.annotations.Nullable;

/** What a person wrote and corrected later: the earlier words stay. */
final class Corrections {
  private Corrections() {}

  /** Keeps what stands in a row and is about to be replaced; an empty place was never filled. */
  static void keepEarlier(
      Connection connection, String table, long id, Map<String, Object> now, Instant at)
      throws SQLException {
    for (Map.Entry<String, Object> each : now.entrySet()) {
      String column = each.getKey();
      List<String> before = new ArrayList<>();
      Query.list(
          connection,
          "SELECT " + column + " FROM " + table + " WHERE id = ?",
          row -> before.add(Objects.requireNonNullElse(row.getString(1), "")),
          id);
      String after = stored(connection, each.getValue());
      for (String earlier : before) {
        if (!earlier.isEmpty() && !earlier.equals(after)) {
          keep(connection, table, id, column, earlier, at);
        }
      }
    }
  }

  /** Keeps what stood in one place. */
  static void keep(
      Connection connection, String table, long id, String column, String earlier, Instant at)
      throws SQLException {
    new Columns()
        .set("table_name", table)
        .set("row_id", id)
        .set("column_name", column)
        .set("earlier", earlier)
        .set("kept_at_millis", at)
        .insert(connection, "correction");
  }

  /** The text that the database makes of a value, whatever its kind. */
  private static String stored(Connection connection, @Nullable Object value) throws SQLException {
    return value == null
        ? ""
        : value instanceof Double
            ? Query.one(connection, "SELECT ?", row -> row.getString(1), value)
            : value.toString();
  }

  /** The corrections of a row, the oldest first. */
  static List<Correction> of(Connection connection, String table, long id) throws SQLException {
    return Query.list(
        connection,
        "SELECT * FROM correction WHERE table_name = ? AND row_id = ? ORDER BY id",
        row ->
            new Correction(
                Row.given(row, "column_name"),
                Row.given(row, "earlier"),
                Row.moment(row, "kept_at_millis").orElseThrow()),
        table,
        id);
  }
}
