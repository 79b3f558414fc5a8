package org.halflight.record;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.halflight.job.EarlierValue;

/** What people corrected, as rows of its table. */
final class EarlierValues {
  private EarlierValues() {}

  /** Keeps what a field said; nothing is kept of one that said nothing. */
  static void keep(
      Connection connection, String table, long id, String name, String words, Instant now)
      throws SQLException {
    if (!words.isEmpty()) {
      new Columns()
          .set("of_table", table)
          .set("of_id", id)
          .set("name", name)
          .set("words", words)
          .set("replaced_at_millis", now)
          .insert(connection, "earlier_value");
    }
  }

  /** What a row said before, in the order of the corrections. */
  static List<EarlierValue> of(Connection connection, String table, long id) throws SQLException {
    return Query.list(
        connection,
        "SELECT * FROM earlier_value WHERE of_table = ? AND of_id = ? ORDER BY id",
        row ->
            new EarlierValue(
                Row.given(row, "name"),
                Row.given(row, "words"),
                Row.moment(row, "replaced_at_millis").orElseThrow()),
        table,
        id);
  }
}
