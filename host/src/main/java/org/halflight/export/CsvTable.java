package org.halflight.export;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;
import org.halflight.files.OutFile;
import org.halflight.files.Reasons;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

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

  private static final CSVFormat EACH_FIELD_IN_QUOTES =
      FORMAT.builder().setQuoteMode(QuoteMode.ALL).get();

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

  /** A table with a row for each of these. */
  static <R> CsvTable of(List<Column<R>> columns, List<R> rows) {
    return new CsvTable(
        Column.names(columns),
        rows.stream()
            .map(row -> columns.stream().map(column -> column.cell().apply(row)).toList())
            .toList());
  }

  /**
   * A cell.
   *
   * @param row counts from 0
   * @param heading of a column of the table
   */
  public String cell(int row, String heading) {
    return rows.get(row).get(headings.indexOf(heading));
  }

  /** For whom a table is written. */
  public enum Dialect {
    /** For programs and people who read it back: every field as it is. */
    PLAIN,
    /**
     * For spreadsheets, which take a field that begins with {@code =}, {@code +}, {@code -},
     * {@code @}, a tab or a line end for a formula and work it out: such a field gets an apostrophe
     * before it unless it is a number, and every field stands in quotes, so that no separator of
     * another country cuts it. The rule is that of OWASP's page on CSV injection, written down from
     * memory.
     */
    SPREADSHEET;

    private static final Pattern FORMULA =
        Pattern.compile("[=+\\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]");
    private static final Pattern NUMBER =
        Pattern.compile("[+-]?\\d{1,30}(\\.\\d{1,30})?([eE][+-]?\\d{1,3})?");

    private CSVFormat format() {
      return this == SPREADSHEET ? EACH_FIELD_IN_QUOTES : FORMAT;
    }

    private String field(String text) {
      return this == SPREADSHEET
              && FORMULA.matcher(text).lookingAt()
              && !NUMBER.matcher(text).matches()
          ? "'" + text
          : text;
    }
  }

  /** Writes the table. */
  public void write(OutFile to, Dialect dialect) {
    to.write(bytes(dialect));
  }

  /** The table as the bytes of a file. */
  public byte[] bytes(Dialect dialect) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, dialect.format())) {
      printer.printRecord(headings);
      for (List<String> row : rows) {
        printer.printRecord(row.stream().map(dialect::field));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
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
        throw new Trouble(Words.say("table.empty", path));
      }
      List<String> headings = rows.remove(0);
      for (int i = 0; i < rows.size(); i++) {
        if (rows.get(i).size() != headings.size()) {
          throw new Trouble(
              Words.say("table.row", path, i + 2, rows.get(i).size(), headings.size()));
        }
      }
      return new CsvTable(headings, rows);
    } catch (CharacterCodingException noText) {
      throw new Trouble(Words.say("table.none", path), noText);
    } catch (CSVException noTable) {
      throw new Trouble(Words.say("table.none", path), noTable);
    } catch (IOException e) {
      throw new Trouble(Words.say("table.unreadable", path, Reasons.of(e)), e);
    } catch (UncheckedIOException e) {
      IOException cause = Objects.requireNonNull(e.getCause());
      throw cause instanceof CSVException || cause instanceof CharacterCodingException
          ? new Trouble(Words.say("table.none", path), e)
          : new Trouble(Words.say("table.unreadable", path, Reasons.of(cause)), e);
    }
  }
}
