package org.halflight.export;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.halflight.trouble.Trouble;

/**
 * A table as a CSV file: RFC 4180, UTF-8, one line of headings, a comma between fields and a point
 * before decimals in every country.
 *
 * @param headings names of the columns, with their units
 * @param rows each as long as the headings
 */
public record CsvTable(List<String> headings, List<List<String>> rows) {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setRecordSeparator("\r\n").get();

  public CsvTable {
    headings = List.copyOf(headings);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != headings.size()) {
        throw new IllegalArgumentException(
            "a row of " + row.size() + " fields under " + headings.size() + " headings");
      }
    }
  }

  /**
   * Writes the table, over a file of this name if there is one.
   *
   * @throws Trouble when the file cannot be written
   */
  public void write(Path path) {
    try (Writer writer = Files.newBufferedWriter(path, StandardCharsets.UTF_8);
        CSVPrinter printer = new CSVPrinter(writer, FORMAT)) {
      printer.printRecord(headings);
      printer.printRecords(rows);
    } catch (IOException e) {
      throw new Trouble(
          "The table "
              + path
              + " cannot be written: "
              + e.getMessage()
              + ". Nothing else is lost; give another name.",
          e);
    }
  }

  /**
   * Reads a table back.
   *
   * @throws Trouble when the file cannot be read or is no such table
   */
  public static CsvTable read(Path path) {
    try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8);
        CSVParser parser = CSVParser.parse(reader, FORMAT)) {
      List<List<String>> rows = new ArrayList<>();
      for (CSVRecord row : parser) {
        rows.add(row.toList());
      }
      if (rows.isEmpty()) {
        throw new Trouble(path + " is empty. Choose a table that an export has written.");
      }
      List<String> headings = rows.remove(0);
      for (int i = 0; i < rows.size(); i++) {
        if (rows.get(i).size() != headings.size()) {
          throw new Trouble(
              path
                  + ", row "
                  + (i + 2)
                  + ": "
                  + rows.get(i).size()
                  + " fields under "
                  + headings.size()
                  + " headings. Mend that row or export the table again.");
        }
      }
      return new CsvTable(headings, rows);
    } catch (IOException | java.io.UncheckedIOException e) {
      throw new Trouble("The table " + path + " cannot be read: " + e.getMessage() + ".", e);
    }
  }
}
