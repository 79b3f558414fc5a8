package org.halflight.record;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.halflight.stored.StoredWords;

/** Words of the record, alone and with spaces between. */
final class Word {
  private Word() {}

  /** A word that this version does not know: a later one has added it. */
  static final class Unknown extends SQLException {
    private static final long serialVersionUID = 1L;

    Unknown(String word) {
      super(word);
    }
  }

  /** In the order of the alphabet: a set has none of its own. */
  static <E extends Enum<E>> String all(StoredWords<E> words, Collection<E> values) {
    return values.stream().map(words::word).sorted().collect(Collectors.joining(" "));
  }

  /** In the order given, which may mean something. */
  static <E extends Enum<E>> String inOrder(StoredWords<E> words, Collection<E> values) {
    return values.stream().map(words::word).collect(Collectors.joining(" "));
  }

  static <E extends Enum<E>> E read(StoredWords<E> words, String word) throws SQLException {
    return words.find(word).orElseThrow(() -> new Unknown(word));
  }

  static <E extends Enum<E>> List<E> readAll(StoredWords<E> words, String text)
      throws SQLException {
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
