package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.halflight.export.CsvTable;
import org.halflight.record.WorkshopRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** No command writes over what must stay. */
class OverwritingTest extends CommandTests {
  private Path session;
  private Path record;

  @BeforeEach
  void files() throws Exception {
    session = TinySession.write(folder.resolve("my.session"));
    record = folder.resolve("record.sqlite");
    WorkshopRecord.open(record, Clock.systemUTC()).close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "export SESSION --firings RECORD",
        "export SESSION --speeds OTHER",
        "export SESSION --extra-tests SESSION",
        "export SESSION --firings LINK",
        "export SESSION --firings EDGES",
        "disc read --from EDGES --edges EDGES",
        "disc read --practice --edges EDGES",
        "picture SESSION --map OTHER",
        "picture SESSION --map SESSION",
        "page SESSION --out OTHER",
        "page SESSION --out RECORD",
        "compare SESSION --before as-found --after as-found --table SESSION",
        "compare SESSION --before as-found --after as-found --statistics NOTES",
        "disc --out NOTES",
        "disc --out OTHER",
        "record backup OTHER",
        "record backup NOTES",
        "record backup RECORD",
        "stops OTHER --practice --picture OTHER",
        "practice --out FOREIGN"
      })
  void whatMustStayStays(String words) throws Exception {
    Path other = TinySession.write(folder.resolve("x.session"));
    Path notes = Files.writeString(folder.resolve("notes.csv"), "buy oil, fine\n");
    Path link = Files.createLink(folder.resolve("link.csv"), record);
    Path edges =
        Files.writeString(
            folder.resolve("edges.csv"), "rig,kind,firmware,ticks_per_second,dark_counts\r\n");
    Path foreign = Files.createDirectory(folder.resolve("foreign"));
    Path inside = TinySession.write(foreign.resolve("practice.session"));
    Files.writeString(inside, Files.readString(inside).replace("PRACTICE", "R-0001  "));
    List<Path> stay = List.of(session, record, other, notes, inside, edges);
    List<byte[]> before = contents(stay);
    for (String more : List.of("", " --force")) {
      String typed = words + (words.startsWith("record") ? "" : more);
      assertThat(
              execute(
                  typed
                      .replace("SESSION", session.toString())
                      .replace("RECORD", record.toString())
                      .replace("OTHER", other.toString())
                      .replace("NOTES", notes.toString())
                      .replace("EDGES", edges.toString())
                      .replace("FOREIGN", foreign.toString())
                      .replace("LINK", link.toString())
                      .split(" ")))
          .as(words)
          .isEqualTo(1);
      assertThat(printed().strip().lines()).as(printed()).hasSize(1);
      List<byte[]> after = contents(stay);
      for (int i = 0; i < before.size(); i++) {
        assertThat(after.get(i)).as(stay.get(i).toString()).isEqualTo(before.get(i));
      }
    }
  }

  @Test
  void aTableIsReplacedByForceOnly() throws Exception {
    Path table = folder.resolve("firings.csv");
    String[] words = {"export", session.toString(), "--firings", table.toString()};
    assertThat(execute(words)).isZero();
    byte[] first = Files.readAllBytes(table);
    assertThat(execute(words)).isEqualTo(1);
    assertThat(printed()).contains("already exists").contains("--force");
    assertThat(execute("export", session.toString(), "--speeds", table.toString(), "--force"))
        .isEqualTo(1);
    assertThat(printed()).contains("holds a different table");
    assertThat(Files.readAllBytes(table)).isEqualTo(first);
    Files.writeString(table, "\r\n", java.nio.file.StandardOpenOption.APPEND);
    assertThat(execute("export", session.toString(), "--firings", table.toString(), "--force"))
        .as(printed())
        .isZero();
    assertThat(Files.readAllBytes(table)).isEqualTo(first);
  }

  @Test
  void oneNameForTwoTablesIsRefusedBeforeAnythingIsWritten() {
    Path table = folder.resolve("both.csv");
    assertThat(
            execute(
                "export",
                session.toString(),
                "--firings",
                table.toString(),
                "--speeds",
                folder.resolve(".").resolve("both.csv").toString()))
        .isEqualTo(1);
    assertThat(printed()).contains("named twice");
    assertThat(table).doesNotExist();
  }

  @Test
  void thePracticeRunReplacesWhatItHasLeftItself() throws Exception {
    Path run = folder.resolve("run");
    assertThat(execute("practice", "--out", run.toString(), "--seed", "3")).isZero();
    byte[] first = Files.readAllBytes(run.resolve("firings.csv"));
    assertThat(execute("practice", "--out", run.toString(), "--seed", "4")).as(printed()).isZero();
    assertThat(Files.readAllBytes(run.resolve("firings.csv"))).isNotEqualTo(first);
    // A page that somebody else has put there.
    Files.writeString(run.resolve("speeds.csv"), "My own notes\n");
    assertThat(execute("practice", "--out", run.toString())).isEqualTo(1);
    assertThat(run.resolve("speeds.csv")).hasContent("My own notes");
  }

  @Test
  void tablesForASpreadsheetHaveNoFormulaOfAnybodysWords() throws Exception {
    Path formula = TinySession.write(folder.resolve("formula.session"), "=HYPERLINK(1)", "1/60");
    Path table = folder.resolve("everyday.csv");
    String[] words = {
      "export", formula.toString(), "--extra-tests", table.toString(), "--spreadsheet"
    };
    assertThat(execute(words)).as(printed()).isZero();
    CsvTable safe = CsvTable.read(table);
    assertThat(safe.rows()).isNotEmpty();
    assertThat(safe.rows().get(0).get(0)).isEqualTo("'=HYPERLINK(1)");
    words[4] = "--force";
    assertThat(execute(words)).as(printed()).isZero();
    assertThat(CsvTable.read(table).rows().get(0).get(0)).isEqualTo("=HYPERLINK(1)");
  }

  private static List<byte[]> contents(List<Path> files) throws Exception {
    List<byte[]> contents = new java.util.ArrayList<>();
    for (Path file : files) {
      contents.add(Files.readAllBytes(file));
    }
    return contents;
  }
}
