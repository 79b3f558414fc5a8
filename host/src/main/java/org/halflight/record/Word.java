package org.halflight.record;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Constants as words of the record: lower case with hyphens, as in the tables for people. */
final class Word {
  /** Words are read some hundred thousand times for a long list. */
  private static final ClassValue<Map<String, Enum<?>>> BY_WORD =
      new ClassValue<>() {
        @Override
        protected Map<String, Enum<?>> computeValue(Class<?> words) {
          Map<String, Enum<?>> constants = new HashMap<>();
          for (Object constant : words.getEnumConstants()) {
            constants.put(of((Enum<?>) constant), (Enum<?>) constant);
          }
          return constants;
        }
      };

  private Word() {}

  /** A word that this version does not know: a later one has added it. */
  static final class Unknown extends SQLException {
    private static final long serialVersionUID = 1L;

    Unknown(String word) {
      super(word);
    }
  }

  static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** In the order of the alphabet: a set has none of its own. */
  static String all(Collection<? extends Enum<?>> values) {
    return values.stream().map(Word::of).sorted().collect(Collectors.joining(" "));
  }

  /** In the order given, which may mean something. */
  static String inOrder(List<? extends Enum<?>> values) {
    return values.stream().map(Word::of).collect(Collectors.joining(" "));
  }

  static <E extends Enum<E>> E read(Class<E> words, String word) throws SQLException {
    Enum<?> found = BY_WORD.get(words).get(word);
    if (found == null) {
      throw new Unknown(word);
    }
    return words.cast(found);
  }

  static <E extends Enum<E>> List<E> readAll(Class<E> words, String text) throws SQLException {
    List<E> all = new ArrayList<>();
    if (text.isEmpty()) {
      return all;
    }
    for (String word : text.split(" ", -1)) {
      all.add(read(words, word));
    }
    return all;
  }
}
