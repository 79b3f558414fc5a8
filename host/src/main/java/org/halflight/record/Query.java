package org.halflight.record;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Questions to the database. */
final class Query {
  /** Makes a value of the row that a result stands at. */
  interface Mapper<T> {
    T map(ResultSet row) throws SQLException;
  }

  private Query() {}

  /** Does what a statement says. */
  static void execute(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, values);
      statement.execute();
    }
  }

  private static void bind(PreparedStatement statement, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
  }

  /** All rows of a question, in order; those that are damaged are noted and left out. */
  static <T> List<T> list(Connection connection, String sql, Mapper<T> mapper, Object... values)
      throws SQLException {
    return list(connection, true, sql, mapper, values);
  }

  private static <T> List<T> list(
      Connection connection, boolean checked, String sql, Mapper<T> mapper, Object... values)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement, values);
      try (ResultSet rows = statement.executeQuery()) {
        List<T> all = new ArrayList<>();
        RowCrc crc = RowCrc.of(rows.getMetaData());
        while (rows.next()) {
          if (!checked || DamagedRows.isWhole(connection, crc, rows)) {
            all.add(mapper.map(rows));
          }
        }
        return all;
      }
    }
  }

  /** All rows of a question as they stand, damaged or not. */
  static <T> List<T> asTheyStand(
      Connection connection, String sql, Mapper<T> mapper, Object... values) throws SQLException {
    return list(connection, false, sql, mapper, values);
  }

  /** The first row of a question, if there is one. */
  static <T> Optional<T> first(
      Connection connection, String sql, Mapper<T> mapper, Object... values) throws SQLException {
    return list(connection, sql, mapper, values).stream().findFirst();
  }

  /** The only row of a question that always has one. */
  static <T> T one(Connection connection, String sql, Mapper<T> mapper, Object... values)
      throws SQLException {
    return list(connection, sql, mapper, values).get(0);
  }
}
