package org.halflight.record;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import org.halflight.words.Words;

/**
 * Rows of a record that are not what was written. Whoever reads comes upon them here and leaves
 * them out; each is reported of once. Safe for use by several threads.
 */
final class DamagedRows {
  /** Whose rows a connection reads. */
  private static final Map<Connection, DamagedRows> BY_CONNECTION = new ConcurrentHashMap<>();

  /**
   * A row that is damaged.
   *
   * @param table its table
   * @param key what it is known by, which may be what is damaged
   */
  record DamagedRow(String table, List<Object> key) {
    DamagedRow {
      key = List.copyOf(key);
    }

    /** What it is, for people. */
    String words() {
      return table + ' ' + String.join(" / ", key.stream().map(String::valueOf).toList());
    }
  }

  private final Map<DamagedRow, Boolean> known = new LinkedHashMap<>();
  private final List<String> reported = new ArrayList<>();
  private Consumer<String> hearer = sentence -> {};

  /** From now on what this connection reads is looked at for these. */
  void watch(Connection connection) {
    BY_CONNECTION.put(connection, this);
  }

  static void leave(Connection connection) {
    BY_CONNECTION.remove(connection);
  }

  /** Whether a row may be used; one that may not is noted. */
  static boolean isWhole(Connection connection, RowCrc crc, ResultSet row) throws SQLException {
    List<String> damaged = crc.damaged(row);
    for (String table : damaged) {
      note(connection, new DamagedRow(table, key(table, row)));
    }
    return damaged.isEmpty();
  }

  /** Notes a row that is damaged. */
  static void note(Connection connection, DamagedRow row) throws SQLException {
    DamagedRows rows = BY_CONNECTION.get(connection);
    if (rows == null) {
      throw new SQLException("damaged: " + row.words());
    }
    rows.add(row);
  }

  /** Forgets all: they were mended, or are looked for again. */
  synchronized void forget() {
    known.clear();
    reported.clear();
  }

  /** Hears a sentence for each damaged row, those that are known already too. */
  synchronized void onDamage(Consumer<String> now) {
    hearer = now;
    sentences().forEach(now);
  }

  /** A sentence for each damaged row that was come upon. */
  synchronized List<String> sentences() {
    List<String> all = new ArrayList<>(reported);
    known.keySet().forEach(row -> all.add(sentence(row)));
    return all;
  }

  /** Reports something else that was not as it should be. */
  synchronized void report(String sentence) {
    reported.add(sentence);
    hearer.accept(sentence);
  }

  /** What else was reported. */
  synchronized List<String> reported() {
    return List.copyOf(reported);
  }

  synchronized List<DamagedRow> rows() {
    return new ArrayList<>(known.keySet());
  }

  private synchronized void add(DamagedRow row) {
    if (known.putIfAbsent(row, true) == null) {
      hearer.accept(sentence(row));
    }
  }

  private static String sentence(DamagedRow row) {
    return Words.say("record.badRow", row.words());
  }

  private static List<Object> key(String table, ResultSet row) throws SQLException {
    List<Object> key = new ArrayList<>();
    for (String column : RowCrc.key(table)) {
      key.add(String.valueOf(value(table, column, row)));
    }
    return key;
  }

  /** By table and column: the columns of a join may bear the same name. */
  private static Object value(String table, String column, ResultSet row) throws SQLException {
    var columns = row.getMetaData();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      if (columns.getColumnName(i).equals(column) && columns.getTableName(i).equals(table)) {
        return row.getObject(i);
      }
    }
    return "?";
  }
}
