package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Objects;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.export.CsvTable;
import org.halflight.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The commands as they are typed; figures come from the practice rig and are simulated. */
class CommandsTest extends CommandTests {
  @Test
  void thePracticeRunLeavesEverythingAndSaysWhatIsWrong() throws IOException {
    Path practice = folder.resolve("practice");
    assertThat(execute("practice", "--out", practice.toString())).isZero();
    assertThat(printed())
        .contains("practice rig: invented shutter, simulated figures")
        .containsPattern("1/8 runs 0\\.\\d\\d stop slow")
        .containsPattern("1/125 is within tolerance")
        .contains("At this scatter 3 firings would decide; 5 are planned.")
        .contains("Odd ones: 0 of 5, up to 45 % possible.");
    assertThat(practice)
        .isDirectoryContaining("glob:**/practice.session")
        .isDirectoryContaining("glob:**/firings.csv")
        .isDirectoryContaining("glob:**/speeds.csv")
        .isDirectoryContaining("glob:**/speed-map.png")
        .isDirectoryContaining("glob:**/firing-row-as-found.png")
        .isDirectoryContaining("glob:**/comparison.csv")
        .isDirectoryContaining("glob:**/statistics.csv")
        .isDirectoryContaining("glob:**/hand-over.pdf");
    // What cleaning did, in the words of a repairer.
    assertThat(printed())
        .contains("stop slow; the means of the others are")
        .contains("The speeds that the slow-speed train governs changed: 1 s to 1/15 are")
        .contains("At 1/30 to 1/500 any change is less than a tenth of a stop.")
        .contains("The slow speeds taken together run more evenly")
        .contains("As found: ADVANCE FIRST. Make the shutter trip earlier in the stroke.")
        .contains("As left: ONE CLICK, WIND TURNS: the linkage is right.");
    try (PDDocument page = Loader.loadPDF(practice.resolve("hand-over.pdf").toFile())) {
      assertThat(new PDFTextStripper().getText(page))
          .contains("As left: ONE CLICK, WIND TURNS: the linkage is right.")
          .contains("measured: linkage");
    }
  }

  @Test
  void theSameSeedBringsTheSameFiringsInSessionsOfTheirOwnAndReplayTheSameTables()
      throws Exception {
    Path one = folder.resolve("one");
    Path two = folder.resolve("two");
    execute("practice", "--out", one.toString(), "--seed", "5");
    execute("practice", "--out", two.toString(), "--seed", "5");
    assertThat(Files.readString(one.resolve("firings.csv")))
        .isEqualTo(Files.readString(two.resolve("firings.csv")));
    assertThat(nameOfSession(one)).isNotEqualTo(nameOfSession(two));
    String session = one.resolve("practice.session").toString();
    // The same file twice brings nothing twice.
    Path again = folder.resolve("again.csv");
    Path speeds = folder.resolve("speeds.csv");
    assertThat(
            execute(
                "export",
                session,
                session,
                "--firings",
                again.toString(),
                "--speeds",
                speeds.toString()))
        .isZero();
    assertThat(CsvTable.read(again)).isEqualTo(CsvTable.read(one.resolve("firings.csv")));
    assertThat(CsvTable.read(speeds)).isEqualTo(CsvTable.read(one.resolve("speeds.csv")));
    assertThat(CsvTable.read(speeds).rows()).hasSize(20);
    assertThat(
            execute(
                "picture",
                session,
                "--map",
                folder.resolve("map.png").toString(),
                "--row",
                folder.resolve("row.png").toString(),
                "--speed",
                "1/8"))
        .isZero();
    assertThat(folder.resolve("map.png")).isNotEmptyFile();
    assertThat(execute("replay", session, "--each")).isZero();
  }

  /** Each session file begins with a name of its own and a date with its offset. */
  private static String nameOfSession(Path practice) {
    BenchEvent first = SessionFile.read(practice.resolve("practice.session")).events().get(0);
    Map<String, String> values = ((BenchEvent.Mark) first).values();
    assertThat(OffsetDateTime.parse(values.get("at")).toInstant()).isEqualTo(Instant.EPOCH);
    return Objects.requireNonNull(values.get("session"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "run SESSION --dial nonsense|There is no dial called nonsense",
        "run SESSION --speeds 1/77|1/77 is not on this dial",
        "run SESSION --checks wynd|There is no check called wynd",
        "run SESSION --speeds none|A run needs at least one speed or check",
        "run SESSION --firings 0|0 firings of each speed are not possible",
        "run SESSION --sync-lever V|--sync-lever does not know V. Choose one of X, M",
        "run SESSION --phase later|--phase does not know later",
        "replay SESSION|There is no file",
        "export OTHER --firings x.csv|is not a Halflight session file",
        "export EMPTY|Say what to export",
        "picture EMPTY --map x.png|There is no run in these sessions",
        "picture EMPTY|Say what to draw",
        "compare EMPTY|there is no run as-found",
        "compare EMPTY --before later|--before does not know later",
        "compare EMPTY --with SESSION|There is no run in these sessions",
        "page EMPTY --out x.pdf|There is no run as found or as left",
        "page EMPTY --out x.pdf --paper a5|--paper does not know a5",
        "page EMPTY --out x.pdf --intake blades|--intake does not understand blades",
        "page EMPTY --out x.pdf --hand-back blades=odd|--hand-back does not know odd",
        "page EMPTY --out x.pdf --f-number 0|is not an f-number"
      })
  void badInputGetsOneSentence(String words, String sentence) throws Exception {
    Path other = Files.writeString(folder.resolve("other"), "something else\n");
    Path empty = Files.writeString(folder.resolve("empty.session"), "halflight-session 1\n");
    String[] typed =
        words
            .replace("SESSION", folder.resolve("none.session").toString())
            .replace("OTHER", other.toString())
            .replace("EMPTY", empty.toString())
            .split(" ");
    assertThat(execute(typed)).isEqualTo(1);
    assertThat(printed()).contains(sentence);
    assertThat(printed().strip().lines()).hasSize(1);
    assertThat(folder.resolve("none.session")).doesNotExist();
  }

  @Test
  void anEmptyRunSaysSo() throws Exception {
    Path empty = Files.writeString(folder.resolve("empty.session"), "halflight-session 1\n");
    assertThat(execute("replay", empty.toString())).isZero();
    assertThat(printed()).contains("Nothing was fired yet.");
  }

  @Test
  void whatWasLostOrDamagedIsSaid() throws Exception {
    Path cut = folder.resolve("cut.session");
    Files.writeString(
        cut,
        "halflight-session 1\nR 1 B 0005 000000B40391 00 0080#BB5E\nR 2 B 0009 000000F003C4 00"
            + " 0080#0000\nR 3 B 00");
    assertThat(execute("replay", cut.toString())).isZero();
    assertThat(printed()).contains("of the lines from the rig 2 came damaged");
  }

  @Test
  void camerasAreNotMixed() throws Exception {
    String run =
        "halflight-session 1\nM 1 run camera=%s phase=adjusting dial=custom speeds=1/60"
            + " reference=exact firings=3\n";
    Path one = Files.writeString(folder.resolve("one.session"), run.formatted("one"));
    Path two = Files.writeString(folder.resolve("two.session"), run.formatted("two"));
    assertThat(execute("replay", one.toString(), two.toString())).isEqualTo(1);
    assertThat(printed()).contains("several cameras (one, two)");
  }

  @Test
  void withoutARigItSaysWhatToDo() {
    assertThat(execute("rigs", "--port", folder.resolve("nothing").toString())).isEqualTo(1);
    assertThat(printed())
        .contains("Looking for rigs")
        .containsPattern("There is no port .*nothing. Plug the rig in");
  }

  @Test
  void commandsBelowCommandsHaveHelpAndKeepTheOptionsOfTheirCommand() throws Exception {
    assertThat(execute("record", "import", "--help")).isZero();
    assertThat(printed())
        .contains("halflight record import")
        .contains("--record=FILE")
        .contains(Words.say("help.record.import"))
        .contains(Words.say("help.any.help"));
    assertThat(execute("profile", "show", "-h")).isZero();
    assertThat(printed()).contains(Words.say("help.profile.show"));
    Path record = folder.resolve("own.sqlite");
    assertThat(
            execute(
                "record",
                "import",
                TinySession.write(folder.resolve("tiny.session")).toString(),
                "--record",
                record.toString(),
                "--new-record"))
        .isZero();
    assertThat(record).isNotEmptyFile();
  }
}
