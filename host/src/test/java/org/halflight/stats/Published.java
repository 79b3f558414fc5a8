package org.halflight.stats;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Data sets of fixtures/published, each with its source at the head of the file. */
final class Published {
  private Published() {}

  static List<CSVRecord> rows(String file) {
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    try (Reader reader = Files.newBufferedReader(Path.of("fixtures", "published", file));
        CSVParser parser = format.parse(reader)) {
      return parser.getRecords();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A column as a sample; empty fields and -999, the sign for a missing value, are left out. */
  static Sample column(String file, String name) {
    return Sample.of(
        rows(file).stream()
            .map(row -> row.get(name))
            .filter(field -> !field.isEmpty() && !field.equals("-999"))
            .map(Double::valueOf)
            .toList());
  }

  /** A column, only the rows where another column has a value. */
  static Sample column(String file, String name, String where, String is) {
    return Sample.of(
        rows(file).stream()
            .filter(row -> row.get(where).equals(is))
            .map(row -> Double.valueOf(row.get(name)))
            .toList());
  }
}
