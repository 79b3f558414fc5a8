package org.halflight.record;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.halflight.stored.StoredWords;

/** Reads optional columns: NULL is 'not known' and nothing else. */
final class Row {
  private Row() {}

  static OptionalDouble real(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  static OptionalLong integer(ResultSet row, String column) throws SQLException {
    long value = row.getLong(column);
    return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(value);
  }

  static OptionalInt count(ResultSet row, String column) throws SQLException {
    int value = row.getInt(column);
    return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
  }

  static Optional<Instant> moment(ResultSet row, String column) throws SQLException {
    OptionalLong millis = integer(row, column);
    return millis.isPresent()
        ? Optional.of(Instant.ofEpochMilli(millis.getAsLong()))
        : Optional.empty();
  }

  static Optional<String> text(ResultSet row, String column) throws SQLException {
    return Optional.ofNullable(row.getString(column));
  }

  /** Whether something holds: {@code yes}, or nothing. */
  static boolean isYes(ResultSet row, String column) throws SQLException {
    return text(row, column).isPresent();
  }

  /** A text that every row has; a damaged one may not. */
  static String given(ResultSet row, String column) throws SQLException {
    return text(row, column).orElseThrow();
  }

  static <E extends Enum<E>> Optional<E> optionalWord(
      ResultSet row, String column, StoredWords<E> words) throws SQLException {
    Optional<String> word = text(row, column);
    return word.isPresent() ? Optional.of(Word.read(words, word.get())) : Optional.empty();
  }

  static <E extends Enum<E>> E word(ResultSet row, String column, StoredWords<E> words)
      throws SQLException {
    return Word.read(words, given(row, column));
  }
}
