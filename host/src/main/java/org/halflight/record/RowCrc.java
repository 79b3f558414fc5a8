package org.halflight.record;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.zip.CRC32;

/**
 * The check sum of a row: CRC-32 over the name of its table and the name, kind and value of each of
 * its columns that is not NULL, its number among them.
 *
 * <p>CRC-32 finds every change of up to 32 bits in a row, and of all others it misses one in four
 * thousand million. It is there against failing disks and memory. Who changes a record on purpose
 * can work it out too.
 */
final class RowCrc {
  static final String COLUMN = "row_crc";

  /** The columns by which a row is known, of each table whose rows bear a check sum. */
  static final Map<String, List<String>> KEYS = keys();

  /** Results are not known by what stands beside them in a list of their table. */
  static final List<String> LARGE = List.of("firing", "firing_result", "light_reading");

  /** The columns of one table among those of a result. */
  private record Part(String table, int crcAt, List<Column> columns) {}

  /** A column of a result, with its name as it goes into the check sum. */
  private static final class Column {
    private final int at;
    private final byte[] name;

    private Column(int at, String name) {
      this.at = at;
      this.name = name.getBytes(StandardCharsets.UTF_8);
    }
  }

  private final List<Part> parts;

  private RowCrc(List<Part> parts) {
    this.parts = parts;
  }

  private static Map<String, List<String>> keys() {
    Map<String, List<String>> keys = new LinkedHashMap<>();
    keys.put("camera", List.of("id"));
    keys.put("visit", List.of("id"));
    keys.put("visit_check", List.of("visit_id", "list", "item"));
    keys.put("work_entry", List.of("id"));
    keys.put("correction", List.of("id"));
    keys.put("sheet_entry", List.of("id"));
    keys.put("photo", List.of("id"));
    keys.put("bench_session", List.of("id"));
    keys.put("rig_start", List.of("rig_serial", "boot_count"));
    keys.put("run", List.of("id"));
    keys.put("run_condition", List.of("run_id", "name"));
    keys.put("link_statistics", List.of("run_id"));
    keys.put("profile", List.of("id"));
    keys.put("light_reading", List.of("id"));
    keys.put("linkage_press", List.of("id"));
    keys.put("plunger_reading", List.of("id"));
    keys.put("firing", List.of("id"));
    keys.put("firing_result", List.of("firing_id"));
    return keys;
  }

  /** The columns by which a row of a table is known. */
  static List<String> key(String table) {
    return Objects.requireNonNull(KEYS.get(table));
  }

  /** For the rows of a result; tables whose check sum it does not hold are not looked at. */
  static RowCrc of(ResultSetMetaData columns) throws SQLException {
    List<Part> parts = new ArrayList<>();
    int count = columns.getColumnCount();
    Map<String, List<Integer>> byTable = new LinkedHashMap<>();
    boolean any = false;
    for (int i = 1; i <= count; i++) {
      any |= columns.getColumnName(i).equals(COLUMN);
    }
    for (int i = 1; any && i <= count; i++) {
      byTable.computeIfAbsent(columns.getTableName(i), name -> new ArrayList<>()).add(i);
    }
    for (Map.Entry<String, List<Integer>> table : byTable.entrySet()) {
      int crcAt = 0;
      List<Column> others = new ArrayList<>();
      for (int i : table.getValue()) {
        if (columns.getColumnName(i).equals(COLUMN)) {
          crcAt = i;
        } else {
          others.add(new Column(i, columns.getColumnName(i)));
        }
      }
      if (crcAt > 0) {
        parts.add(new Part(table.getKey(), crcAt, others));
      }
    }
    return new RowCrc(parts);
  }

  /**
   * The tables whose part of this row is not what it was when it was written; one that a join found
   * no row in is whole.
   */
  List<String> damaged(ResultSet row) throws SQLException {
    List<String> damaged = new ArrayList<>(0);
    for (Part part : parts) {
      long kept = row.getLong(part.crcAt());
      if (!row.wasNull() && kept != crc(part, row)) {
        damaged.add(part.table());
      }
    }
    return damaged;
  }

  /** Works out the check sum of a row that was written, and keeps it. */
  static void seal(Connection connection, String table, Object... key) throws SQLException {
    String where = where(table);
    long crc = 0;
    boolean there = false;
    try (PreparedStatement statement =
        connection.prepareStatement("SELECT * FROM " + table + where)) {
      bind(statement, 1, key);
      try (ResultSet row = statement.executeQuery()) {
        there = row.next();
        if (there) {
          crc = crc(of(row.getMetaData()).parts.get(0), row);
        }
      }
    }
    if (there) {
      try (PreparedStatement statement =
          connection.prepareStatement("UPDATE " + table + " SET row_crc = ?" + where)) {
        statement.setLong(1, crc);
        bind(statement, 2, key);
        statement.executeUpdate();
      }
    }
  }

  /** Works out the check sums of all rows, and keeps them. */
  static void sealAll(Connection connection) throws SQLException {
    List<String> there =
        Query.list(
            connection,
            "SELECT name FROM sqlite_master WHERE type = 'table'",
            row -> row.getString(1));
    for (Map.Entry<String, List<String>> each : KEYS.entrySet()) {
      String table = each.getKey();
      if (!there.contains(table)) {
        // It comes with a later step, and its rows are sealed as they come.
        continue;
      }
      try (Statement all = connection.createStatement();
          PreparedStatement keep =
              connection.prepareStatement("UPDATE " + table + " SET row_crc = ?" + where(table))) {
        // Gathered first: a row that is changed may come twice in a list that is still open.
        List<Object[]> sums = new ArrayList<>();
        try (ResultSet row = all.executeQuery("SELECT * FROM " + table)) {
          Part part = of(row.getMetaData()).parts.get(0);
          while (row.next()) {
            List<Object> sum = new ArrayList<>();
            sum.add(crc(part, row));
            for (String column : each.getValue()) {
              sum.add(row.getObject(column));
            }
            sums.add(sum.toArray());
          }
        }
        for (Object[] sum : sums) {
          bind(keep, 1, sum);
          keep.executeUpdate();
        }
      }
    }
  }

  /** Keeps the check sum of the form: the statements that made tables, indexes and triggers. */
  static void sealForm(Connection connection) throws SQLException {
    Query.execute(
        connection,
        "INSERT OR REPLACE INTO form (id, schema_crc) VALUES (1, ?)",
        ofForm(connection));
  }

  /** Whether tables, indexes and triggers are those that the program made. */
  static boolean isFormWhole(Connection connection) throws SQLException {
    List<Long> kept =
        Query.list(connection, "SELECT schema_crc FROM form WHERE id = 1", row -> row.getLong(1));
    return kept.equals(List.of(ofForm(connection)));
  }

  private static long ofForm(Connection connection) throws SQLException {
    CRC32 crc = new CRC32();
    Query.list(
            connection,
            "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name",
            row ->
                row.getString(1)
                    + '\n'
                    + row.getString(2)
                    + '\n'
                    + row.getString(3)
                    + '\n'
                    + row.getString(4)
                    + '\n')
        .forEach(text -> crc.update(text.getBytes(StandardCharsets.UTF_8)));
    return crc.getValue();
  }

  /** The condition that finds one row by its key. */
  static String where(String table) {
    return key(table).stream()
        .map(column -> column + " = ?")
        .collect(Collectors.joining(" AND ", " WHERE ", ""));
  }

  private static void bind(PreparedStatement statement, int from, Object... values)
      throws SQLException {
    for (int i = 0; i < values.length; i++) {
      statement.setObject(from + i, values[i]);
    }
  }

  private static long crc(Part part, ResultSet row) throws SQLException {
    CRC32 crc = new CRC32();
    ByteBuffer number = ByteBuffer.allocate(Long.BYTES);
    crc.update(part.table().getBytes(StandardCharsets.UTF_8));
    for (Column column : part.columns()) {
      Object value = row.getObject(column.at);
      if (value != null) {
        crc.update(0);
        crc.update(column.name);
        crc.update(0);
        add(crc, value, number);
      }
    }
    return crc.getValue();
  }

  private static void add(CRC32 crc, Object value, ByteBuffer number) {
    if (value instanceof byte[] bytes) {
      crc.update('b');
      addNumber(crc, bytes.length, number);
      crc.update(bytes);
    } else if (value instanceof Double real) {
      crc.update('r');
      addNumber(crc, Double.doubleToLongBits(real), number);
    } else if (value instanceof Number integer) {
      crc.update('i');
      addNumber(crc, integer.longValue(), number);
    } else {
      byte[] text = value.toString().getBytes(StandardCharsets.UTF_8);
      crc.update('t');
      addNumber(crc, text.length, number);
      crc.update(text);
    }
  }

  private static void addNumber(CRC32 crc, long value, ByteBuffer number) {
    number.putLong(0, value).rewind();
    crc.update(number);
  }
}
