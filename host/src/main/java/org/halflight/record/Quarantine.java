package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * Takes damaged rows out of their tables into one of their own, as text: nothing that was measured
 * is thrown away. While it is open, the triggers that keep raw data let it pass; it is opened and
 * closed within one transaction.
 */
final class Quarantine implements AutoCloseable {
  private final Connection connection;
  private final Instant now;

  private Quarantine(Connection connection, Instant now) {
    this.connection = connection;
    this.now = now;
  }

  static Quarantine begin(Connection connection, Instant now) throws SQLException {
    Query.execute(connection, "INSERT INTO repair_under_way (id) VALUES (1)");
    return new Quarantine(connection, now);
  }

  /** Moves a row here; does nothing where there is none. */
  void move(String table, Object... key) throws SQLException {
    String content = content(connection, table, key);
    if (content.isEmpty()) {
      return;
    }
    Query.execute(
        connection,
        "INSERT INTO set_aside (table_name, content, at_millis) VALUES (?, ?, ?)",
        table,
        content,
        now.toEpochMilli());
    Query.execute(connection, "DELETE FROM " + table + RowCrc.where(table), key);
  }

  /** What stands in a row, for people: its columns that are not empty; bytes as hexadecimals. */
  static String content(Connection connection, String table, Object... key) throws SQLException {
    return String.join(
        "",
        Query.asTheyStand(
            connection, "SELECT * FROM " + table + RowCrc.where(table), Quarantine::content, key));
  }

  private static String content(ResultSet row) throws SQLException {
    ResultSetMetaData columns = row.getMetaData();
    List<String> parts = new ArrayList<>();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      Object value = row.getObject(i);
      if (value instanceof byte[] bytes) {
        value = HexFormat.of().formatHex(bytes);
      }
      if (value != null && !columns.getColumnName(i).equals(RowCrc.COLUMN)) {
        parts.add(columns.getColumnName(i) + "=" + value.toString().replace('\n', ' '));
      }
    }
    return String.join("; ", parts);
  }

  @Override
  public void close() throws SQLException {
    Query.execute(connection, "DELETE FROM repair_under_way");
  }
}
