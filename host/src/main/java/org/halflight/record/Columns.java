package org.halflight.record;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.halflight.job.Detail;
import org.halflight.job.Details;
import org.halflight.job.Id;
import org.halflight.stored.StoredWords;

/** Values for the columns of one row, by name. */
final class Columns {
  private final Map<String, Object> values = new LinkedHashMap<>();

  Columns set(String column, String value) {
    values.put(column, value);
    return this;
  }

  Columns set(String column, long value) {
    values.put(column, value);
    return this;
  }

  Columns set(String column, double value) {
    values.put(column, value);
    return this;
  }

  Columns set(String column, boolean value) {
    values.put(column, value ? 1L : 0L);
    return this;
  }

  Columns set(String column, byte[] value) {
    values.put(column, value);
    return this;
  }

  <E extends Enum<E>> Columns set(String column, StoredWords<E> words, E value) {
    return set(column, words.word(value));
  }

  <E extends Enum<E>> Columns setOptional(String column, StoredWords<E> words, Optional<E> value) {
    return setOptional(column, value.map(words::word));
  }

  /** {@code yes} where something holds, else nothing: rows of earlier forms stay as they are. */
  Columns setIf(String column, boolean holds) {
    values.put(column, holds ? Detail.YES : null);
    return this;
  }

  /** Details under their words, with an underscore for a hyphen. */
  Columns set(List<Detail> which, Details details) {
    for (Detail detail : which) {
      String words = details.of(detail);
      values.put(column(detail), words.isEmpty() ? null : words);
    }
    return this;
  }

  static Details details(ResultSet row, List<Detail> which) throws SQLException {
    Map<Detail, String> noted = new EnumMap<>(Detail.class);
    for (Detail detail : which) {
      Row.text(row, column(detail)).ifPresent(words -> noted.put(detail, words));
    }
    return new Details(noted);
  }

  private static String column(Detail detail) {
    return Detail.WORDS.word(detail).replace('-', '_');
  }

  Columns set(String column, Instant value) {
    return set(column, value.toEpochMilli());
  }

  Columns set(String column, OptionalDouble value) {
    values.put(column, value.isPresent() ? value.getAsDouble() : null);
    return this;
  }

  Columns set(String column, OptionalLong value) {
    values.put(column, value.isPresent() ? value.getAsLong() : null);
    return this;
  }

  /** A text, a number or a moment; empty becomes NULL. */
  Columns setOptional(String column, Optional<?> value) {
    Object kept = value.orElse(null);
    if (kept instanceof Enum<?>) {
      throw new IllegalArgumentException("a constant is kept by its word: " + kept);
    }
    if (kept instanceof Instant moment) {
      kept = moment.toEpochMilli();
    } else if (kept instanceof Boolean yes) {
      kept = yes ? 1L : 0L;
    }
    values.put(column, kept);
    return this;
  }

  /** Adds a row; gives its number. */
  long insert(Connection connection, String table) throws SQLException {
    insert(connection, "INSERT", table);
    long id = Query.one(connection, "SELECT last_insert_rowid()", row -> row.getLong(1));
    RowCrc.seal(connection, table, id);
    return id;
  }

  /** Adds the row of what is new, or changes that of what is there; gives what it is known by. */
  <T> Id<T> keep(Connection connection, String table, Id<T> id) throws SQLException {
    if (id.isNew()) {
      return new Id<>(insert(connection, table));
    }
    if (!update(connection, table, id.value())) {
      throw new IllegalArgumentException("not in this record: " + id);
    }
    return id;
  }

  /** Like {@link #keep}; what a correction takes the place of is kept too. */
  <T> Id<T> keep(Connection connection, String table, Id<T> id, Instant now) throws SQLException {
    if (!id.isNew()) {
      Corrections.keepEarlier(connection, table, id.value(), values, now);
    }
    return keep(connection, table, id);
  }

  /** Adds a row to a table that numbers none. */
  void add(Connection connection, String table) throws SQLException {
    insert(connection, "INSERT", table);
    RowCrc.seal(connection, table, key(table));
  }

  /** Adds a row, or puts it in the place of the one with the same key. */
  void replace(Connection connection, String table) throws SQLException {
    insert(connection, "INSERT OR REPLACE", table);
    RowCrc.seal(connection, table, key(table));
  }

  private Object[] key(String table) {
    return RowCrc.key(table).stream().map(values::get).toArray();
  }

  /**
   * Changes the row of a number; gives whether there is one. The row bears the check sum of what
   * then stands in it, so all its columns are given, or it was read in the same transaction.
   */
  boolean update(Connection connection, String table, long id) throws SQLException {
    String sql =
        "UPDATE "
            + table
            + " SET "
            + values.keySet().stream().map(name -> name + " = ?").collect(Collectors.joining(", "))
            + " WHERE id = ?";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      int at = bind(statement);
      statement.setLong(at, id);
      if (statement.executeUpdate() == 0) {
        return false;
      }
    }
    RowCrc.seal(connection, table, id);
    return true;
  }

  private void insert(Connection connection, String verb, String table) throws SQLException {
    String sql =
        verb
            + " INTO "
            + table
            + " ("
            + String.join(", ", values.keySet())
            + ") VALUES ("
            + String.join(", ", Collections.nCopies(values.size(), "?"))
            + ")";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      bind(statement);
      statement.executeUpdate();
    }
  }

  private int bind(PreparedStatement statement) throws SQLException {
    int at = 1;
    for (Object value : values.values()) {
      statement.setObject(at++, value);
    }
    return at;
  }
}
