package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.halflight.files.FaultLog;
import org.junit.jupiter.api.Test;

/** Words and files that once ended in a stack trace. */
class SmallFaultsTest extends CommandTests {
  private Supplier<Instant> date = () -> Instant.EPOCH;

  @Test
  void aSpeedWithUnusableFiringsOnlyHasNoRow() throws Exception {
    Path session = TinySession.damaged(folder.resolve("my.session"));
    Path row = folder.resolve("row.png");
    assertThat(execute("picture", session.toString(), "--row", row.toString(), "--speed", "1/60"))
        .isEqualTo(1);
    assertThat(printed()).contains("has no firing that a firing row can show");
    assertThat(printed().strip().lines()).hasSize(1);
    assertThat(row).doesNotExist();
  }

  @Test
  void practiceRefusesOptionsThatDoNotAgreeBeforeItBegins() {
    String out = folder.resolve("practice").toString();
    assertThat(execute("practice", "--stages", "--fit", "nonsense", "--out", out)).isEqualTo(1);
    assertThat(printed()).contains("--fit does not know nonsense");
    assertThat(execute("practice", "--quick", "--stages", "--out", out)).isEqualTo(1);
    assertThat(printed()).contains("not both");
    assertThat(execute("practice", "--fit", "sound", "--out", out)).isEqualTo(1);
    assertThat(printed()).contains("--fit belongs to --stages").doesNotContain("Setting the light");
    assertThat(folder.resolve("practice")).doesNotExist();
  }

  @Test
  void edgesOutOfOrderAreSaidWithTheirRow() throws Exception {
    String head =
        "rig,kind,firmware,ticks_per_second,dark_counts,full_counts,low_counts,high_counts,"
            + "channel,light,ticks\r\n";
    String row = "R-0001,full,1.0.0,16000000,10.0,700.0,150.0,600.0,low,%d,%d\r\n";
    Path file =
        Files.writeString(
            folder.resolve("edges.csv"),
            head + row.formatted(1, 2000) + row.formatted(0, 1000) + row.formatted(1, 3000));
    assertThat(execute("disc", "read", "--from", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("edges.csv, row 3: this edge comes before");
  }

  @Test
  void aTableThatIsNoneIsSaidWithoutTheNameOfAClass() throws Exception {
    Path file = Files.writeString(folder.resolve("t.csv"), "a,b\r\n\"c\"d,e\r\n");
    assertThat(execute("gauge", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("is not a table (CSV)").doesNotContain("Exception");
    Files.write(file, new byte[] {(byte) 0xFF, (byte) 0xFE, 0, 1});
    assertThat(execute("gauge", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("is not a table (CSV)").doesNotContain("Exception");
  }

  @Test
  void aLabelThatBeginsWithAnAtSignIsALabel() throws Exception {
    Path words = Files.writeString(folder.resolve("SUM"), "--shutter=secret words\n");
    String session = TinySession.write(folder.resolve("my.session")).toString();
    Path page = folder.resolve("page.pdf");
    assertThat(execute("page", session, "--out", page.toString(), "--camera", "@" + words))
        .as(printed())
        .isZero();
    try (var document = org.apache.pdfbox.Loader.loadPDF(page.toFile())) {
      String text = new org.apache.pdfbox.text.PDFTextStripper().getText(document);
      assertThat(text).doesNotContain("secret words").contains("@" + folder);
    }
    assertThat(execute("replay", "@" + words)).isEqualTo(1);
    assertThat(printed()).contains("@");
  }

  @Test
  void oddWordsOnThePageMakeAPage() throws Exception {
    String session = TinySession.write(folder.resolve("my.session")).toString();
    for (String odd :
        List.of(
            "w".repeat(2000), "\u0000\u0007\u202e", "{0} {1}", "\uD83D\uDE00\uDFFF", "a\nb\tc")) {
      assertThat(
              execute(
                  "page",
                  "--bench",
                  session,
                  "--force",
                  "--out=" + folder.resolve("page.pdf"),
                  "--camera=" + odd,
                  "--serial=" + odd,
                  "--job=" + odd,
                  "--shutter=" + odd,
                  "--done=" + odd,
                  "--not-tested=" + odd,
                  "--intake=" + odd.replace("=", "") + "=ok," + odd))
          .as(printed())
          .isZero();
    }
    assertThat(folder.resolve(FaultLog.NAME)).doesNotExist();
  }

  @Test
  void aFaultOfTheProgramIsASentenceAndItsDetailsAreKept() throws Exception {
    int[] asked = new int[1];
    date =
        () -> {
          if (asked[0]++ == 0) {
            throw new StackOverflowError("too deep");
          }
          return Instant.EPOCH;
        };
    assertThat(execute("record", "take-in", folder.resolve("x.session").toString())).isEqualTo(1);
    assertThat(printed())
        .contains("Something went wrong in the program itself (in the command halflight record")
        .contains(folder.resolve(FaultLog.NAME).toString());
    assertThat(printed().strip().lines()).hasSize(1);
    assertThat(Files.readString(folder.resolve(FaultLog.NAME))).contains("too deep");
  }

  @Override
  Instant now() {
    return date.get();
  }
}
