package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfileId;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("long")
class ProfileCommandsTest extends CommandTests {
  private static final RigProfile PROFILE =
      InventedProfiles.bare(
          new ProfiledRig("R-0001", "full", "1.0.0"),
          LocalDate.of(2025, 3, 9),
          new LightRange(4, 700, 800),
          OptionalDouble.of(1e-4));

  @Test
  void aProfileIsTakenInShownAndWrittenOutTheSame() throws Exception {
    Path given = folder.resolve("given.profile");
    Path again = folder.resolve("again.profile");
    Files.writeString(given, ProfileFile.write(PROFILE));

    assertThat(execute("profile", "import", given.toString())).as(printed()).isZero();
    assertThat(execute("profile", "show", "R-0001")).isZero();
    assertThat(printed()).contains("Profile of the rig R-0001 (full, firmware 1.0.0)");
    assertThat(execute("profile", "export", "R-0001", again.toString())).isZero();
    assertThat(Files.readString(again)).isEqualTo(Files.readString(given));
  }

  @Test
  void anEditedOrCutFileIsRefusedInASentence() throws Exception {
    Path file = folder.resolve("edited.profile");
    String text = ProfileFile.write(PROFILE);
    Files.writeString(file, text.replace("700.0", "710.0"));
    assertThat(execute("profile", "import", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("was changed after it was written, so it is not used");
    Files.writeString(file, text.substring(0, text.length() / 2));
    assertThat(execute("profile", "show", file.toString())).isEqualTo(1);
    assertThat(printed()).contains("is missing, so it is not used");
    assertThat(execute("profile", "show", "R-0009")).isEqualTo(1);
    assertThat(printed()).contains("There is no profile of the rig R-0009.");
  }

  /** The practice rig's light is 819 counts; its delays are not those of this invented profile. */
  private static RigProfile ofPractice(LocalDate date, double least, double greatest) {
    EdgeDelays delays = new EdgeDelays(0, 1e-8, 20e-6, 1e-8);
    return new RigProfile(
        new ProfiledRig("PRACTICE", "full", "practice-1"),
        date,
        new LightRange(8, least, greatest),
        Optional.empty(),
        Map.of(),
        Optional.empty(),
        Optional.empty(),
        Map.of(Channel.CENTRE_LOW, delays, Channel.CENTRE_HIGH, delays),
        Map.of(),
        OptionalDouble.empty());
  }

  private Path given(RigProfile profile) throws Exception {
    Path file = folder.resolve("given.profile");
    Files.writeString(file, ProfileFile.write(profile));
    return file;
  }

  private String replayed(String... more) {
    String session = folder.resolve("run").resolve("practice.session").toString();
    List<String> words = new ArrayList<>(List.of("replay", session, "--each"));
    words.addAll(List.of(more));
    assertThat(execute(words.toArray(String[]::new))).as(printed()).isZero();
    return printed();
  }

  @Test
  void aSessionIsReplayedWithTheProfileOnTheShelfAndSaysHowItStands() throws Exception {
    assertThat(execute("practice", "--out", folder.resolve("run").toString())).isZero();
    String without = replayed();
    assertThat(without).contains("Not calibrated: no profile is used.");

    LocalDate day = LocalDate.EPOCH;
    execute("profile", "import", given(ofPractice(day, 700, 900)).toString());
    String with = replayed();
    assertThat(with)
        .contains("Calibrated: measured with the profile of 1970-01-01.")
        .doesNotContain("Not calibrated");
    assertThat(replayed("--no-profile")).isEqualTo(without);
    assertThat(replayed()).isEqualTo(with).isNotEqualTo(without);

    assertThat(replayed("--profile", given(ofPractice(day, 300, 400)).toString()))
        .contains("full light is outside the light");
    assertThat(replayed("--profile", given(ofPractice(day.plusDays(91), 700, 900)).toString()))
        .contains("older than you allow");
    assertThat(
            replayed(
                "--profile-days",
                "100",
                "--profile",
                given(ofPractice(day.plusDays(91), 700, 900)).toString()))
        .contains("Calibrated: measured");
    assertThat(replayed("--profile", given(PROFILE).toString()))
        .contains("belongs to another rig, so it is not used");

    Path kept = folder.resolve("profiles").resolve("PRACTICE_1970-01-01.profile");
    String text = Files.readString(kept);
    Files.writeString(kept, text.replace("700.0", "710.0"));
    assertThat(replayed()).contains("was changed after it was written, so it is not used");
    Files.writeString(kept, text.substring(0, text.length() - 12));
    assertThat(replayed()).contains("the end of the profile's file is missing");
    assertThat(Stream.of(replayed().split("\n")).filter(l -> l.contains("stop")).toList())
        .isEqualTo(Stream.of(without.split("\n")).filter(l -> l.contains("stop")).toList());
  }

  @Test
  void pageAndTablesSayWithWhichProfile() throws Exception {
    assertThat(execute("practice", "--out", folder.resolve("run").toString())).isZero();
    String session = folder.resolve("run").resolve("practice.session").toString();
    RigProfile profile = ofPractice(LocalDate.EPOCH, 700, 900);
    execute("profile", "import", given(profile).toString());
    Path page = folder.resolve("page.pdf");
    Path firings = folder.resolve("firings.csv");
    Path speeds = folder.resolve("speeds.csv");
    assertThat(execute("page", session, "--bench", "--out", page.toString()))
        .as(printed())
        .isZero();
    assertThat(text(page))
        .contains("Rig calibrated: measured with the profile of 1970-01-01")
        .doesNotContain("not calibrated");
    execute("page", session, "--bench", "--out", page.toString(), "--no-profile", "--force");
    assertThat(text(page)).contains("Rig not calibrated").doesNotContain("Rig calibrated");
    execute(
        "page",
        "--bench",
        session,
        "--out",
        page.toString(),
        "--force",
        "--profile",
        given(ofPractice(LocalDate.EPOCH, 300, 400)).toString());
    assertThat(text(page))
        .contains("Rig not calibrated")
        .contains("full light is outside the light");
    execute("export", session, "--firings", firings.toString(), "--speeds", speeds.toString());
    assertThat(Files.readString(firings)).contains(ProfileId.of(profile).label());
    assertThat(Files.readAllLines(speeds).get(1)).contains(",yes,mean-of-setting,");
    execute("compare", session);
    assertThat(printed()).contains("Calibrated: measured with the profile of 1970-01-01.");
  }

  private static String text(Path page) throws Exception {
    try (PDDocument document = Loader.loadPDF(page.toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
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
}
