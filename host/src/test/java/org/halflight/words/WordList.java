package org.halflight.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Rows of a table under fixtures/words; the tests run at the top of the repository. */
final class WordList {
  private WordList() {}

  /** The cells of each row below the row of headings; lines that begin with # are remarks. */
  static List<List<String>> rows(String file) {
    try {
      List<String> lines =
          Files.readAllLines(Path.of("fixtures", "words", file)).stream()
              .filter(line -> !line.startsWith("#") && !line.isBlank())
              .toList();
      int columns = lines.get(0).split("\t", -1).length;
      List<List<String>> rows =
          lines.stream().skip(1).map(line -> List.of(line.split("\t", -1))).toList();
      for (List<String> row : rows) {
        if (row.size() != columns || row.contains("")) {
          throw new AssertionError(file + " has a row with an empty or missing cell: " + row);
        }
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
