package org.halflight.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.export.CsvTable.Dialect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which fields a spreadsheet takes for a formula: OWASP's page on CSV injection, from memory. */
class SpreadsheetTest {
  private static final List<String> FORMULAS =
      List.of(
          "=1+1",
          "=HYPERLINK(\"http://example.invalid\")",
          "+1+cmd",
          "-1+1",
          "-",
          "-lens",
          "@SUM(A1)",
          "\t=1",
          "\r=1",
          "\n=1",
          "\uFF1D1+1",
          "=1,2\",\"=3");

  private static final List<String> NUMBERS =
      List.of("-0.12", "+0.5", "-1", "-1.5e-3", "0.000001", "12345678901", "-0.000000");

  private static final List<String> WORDS =
      List.of("", "a=1", "1/60", "'quoted'", "my label; =1", "comma, \"quote\"", "2026-11-30");

  @TempDir private Path folder;

  @Test
  void wordsThatBeginLikeAFormulaAreMadeHarmlessAndNumbersStayNumbers() throws Exception {
    CsvTable read = readBack(Dialect.SPREADSHEET);
    for (int i = 0; i < FORMULAS.size(); i++) {
      String cell = read.rows().get(i).get(0);
      assertThat(cell).isEqualTo("'" + FORMULAS.get(i));
      assertThat("=+-@\t\r\n\uFF1D").doesNotContain(cell.substring(0, 1));
    }
    assertThat(cells(read, FORMULAS.size(), NUMBERS.size())).isEqualTo(NUMBERS);
    for (String number : cells(read, FORMULAS.size(), NUMBERS.size())) {
      assertThat(Double.parseDouble(number)).isFinite();
    }
    assertThat(cells(read, FORMULAS.size() + NUMBERS.size(), WORDS.size())).isEqualTo(WORDS);
    // No separator of another country begins a field within a field.
    assertThat(text(Dialect.SPREADSHEET)).contains("\"my label; =1\"");
  }

  @Test
  void aPlainTableStaysAsItIs() throws Exception {
    CsvTable read = readBack(Dialect.PLAIN);
    assertThat(cells(read, 0, FORMULAS.size())).isEqualTo(FORMULAS);
    assertThat(cells(read, FORMULAS.size(), NUMBERS.size())).isEqualTo(NUMBERS);
    assertThat(text(Dialect.PLAIN)).contains("\r\n-0.12,1\r\n");
  }

  private static List<String> cells(CsvTable table, int from, int count) {
    return table.rows().subList(from, from + count).stream().map(row -> row.get(0)).toList();
  }

  private static CsvTable table() {
    List<List<String>> rows =
        java.util.stream.Stream.of(FORMULAS, NUMBERS, WORDS)
            .flatMap(List::stream)
            .map(cell -> List.of(cell, "1"))
            .toList();
    return new CsvTable(List.of("words", "other"), rows);
  }

  private static String text(Dialect dialect) {
    return new String(table().bytes(dialect), StandardCharsets.UTF_8);
  }

  private CsvTable readBack(Dialect dialect) throws Exception {
    return CsvTable.read(Files.write(folder.resolve("table.csv"), table().bytes(dialect)));
  }
}
