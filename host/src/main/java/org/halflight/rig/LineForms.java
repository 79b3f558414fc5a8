package org.halflight.rig;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * The kinds of lines of one direction, each with its letter and the one list of its fields.
 *
 * @param <L> what all these lines are
 */
final class LineForms<L> {
  /** Visits all fields of a kind of line, in the order of the line, and makes the value of them. */
  @FunctionalInterface
  interface FieldList<T> {
    T visit(Fields<T> fields);
  }

  private record Form<T>(char kind, Class<T> type, FieldList<T> fields) {
    Optional<T> read(int sequence, String text) {
      FieldReader<T> reader = new FieldReader<>(sequence, text);
      try {
        T value = fields.visit(reader);
        return reader.isRight() ? Optional.of(value) : Optional.empty();
      } catch (IllegalArgumentException refused) {
        // The value itself says that it cannot be.
        return Optional.empty();
      }
    }

    String body(int sequence, Object value) {
      FieldWriter<T> writer = new FieldWriter<>(kind, sequence, type.cast(value));
      fields.visit(writer);
      return writer.body();
    }
  }

  private final Map<Character, Form<? extends L>> byKind = new HashMap<>();
  private final Map<Class<?>, Form<? extends L>> byType = new HashMap<>();

  /** Adds a kind. */
  <T extends L> LineForms<L> with(char kind, Class<T> type, FieldList<T> fields) {
    Form<T> form = new Form<>(kind, type, fields);
    byKind.put(kind, form);
    byType.put(type, form);
    return this;
  }

  Set<Class<?>> types() {
    return byType.keySet();
  }

  boolean has(char kind) {
    return byKind.containsKey(kind);
  }

  /**
   * Reads a line of a kind that there is.
   *
   * @param text its fields, each behind one space
   * @return what it says, empty where its fields are not those of its kind
   */
  Optional<L> read(char kind, int sequence, String text) {
    return Objects.requireNonNull(byKind.get(kind)).read(sequence, text).map(Function.identity());
  }

  /**
   * The line of a value, without its CRC.
   *
   * @throws IllegalArgumentException when a value does not fit its field
   */
  String body(int sequence, L value) {
    return Objects.requireNonNull(byType.get(value.getClass())).body(sequence, value);
  }
}
