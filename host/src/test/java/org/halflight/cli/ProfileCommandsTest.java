package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.link.serial.SerialPorts;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileText;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProfileCommandsTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  private static final RigProfile PROFILE =
      new RigProfile(
          new ProfiledRig("R-0001", "full", "1.0.0"),
          LocalDate.of(2025, 3, 9),
          new LightRange(4, 700, 800),
          Optional.empty(),
          Map.of(),
          Optional.empty(),
          Optional.empty(),
          Map.of(),
          Map.of(),
          OptionalDouble.of(1e-4));

  @Test
  void aProfileIsTakenInShownAndWrittenOutTheSame() throws Exception {
    Path given = folder.resolve("given.profile");
    Path again = folder.resolve("again.profile");
    Files.writeString(given, ProfileText.write(PROFILE));

    assertThat(execute("profile", "import", given.toString())).as(printed()).isZero();
    assertThat(execute("profile", "show", "R-0001")).isZero();
    assertThat(printed()).contains("Profile of the rig R-0001 (full, firmware 1.0.0)");
    assertThat(execute("profile", "export", "R-0001", again.toString())).isZero();
    assertThat(Files.readString(again)).isEqualTo(Files.readString(given));
  }

  @Test
  void anEditedOrCutFileIsRefusedInASentence() throws Exception {
    Path file = folder.resolve("edited.profile");
    String text = ProfileText.write(PROFILE);
    Files.writeString(file, text.replace("700.0", "710.0"));
    assertThat(execute("profile", "import", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("was changed after it was written, so it is not used");
    Files.writeString(file, text.substring(0, text.length() / 2));
    assertThat(execute("profile", "show", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("is missing, so it is not used");
    assertThat(execute("profile", "show", "R-0009")).isEqualTo(1);
    assertThat(printed()).contains("There is no profile of the rig R-0009.");
  }

  @Test
  void theDiscIsWrittenWithItsAnglesAndCautions() throws Exception {
    Path disc = folder.resolve("disc.pdf");
    assertThat(execute("disc", "--out", disc.toString(), "--paper", "letter")).isZero();
    try (PDDocument document = Loader.loadPDF(disc.toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      assertThat(new PDFTextStripper().getText(document))
          .contains("3.6 degrees", "57.6 degrees", "100 mm", "a spinning disc cuts");
    }
  }

  /** The AIAG data again, as a table: its figures are held in GaugeStudyTest. */
  @Test
  void aGaugeStudyIsSaid() throws Exception {
    Path table = folder.resolve("gauge.csv");
    List<String> rows =
        Files.readAllLines(Path.of("fixtures/published/aiag_gauge_rr.csv")).stream()
            .filter(line -> !line.startsWith("#"))
            .toList();
    Files.write(table, rows);
    assertThat(execute("gauge", table.toString())).isEqualTo(1);
    assertThat(printed()).contains("must name the columns part, operator and value");
    Files.writeString(table, String.join("\n", rows).replace(",y\n", ",value\n") + "\n");
    assertThat(execute("gauge", table.toString())).as(printed()).isZero();
    assertThat(printed()).contains("Usable with care").contains("4 kinds of part");
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private int execute(String... words) {
    out.reset();
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return Halflight.execute(
        new Surroundings(
            new Terminal(print, new ByteArrayInputStream(new byte[0])),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.EPOCH,
            folder,
            "test"),
        words);
  }
}
