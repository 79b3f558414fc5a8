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
import org.halflight.link.serial.SerialPorts;
import org.halflight.profile.ClockRate;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on the practice rig; all figures are simulated. */
class DiscReadCommandTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  @Test
  void thePracticeDiscIsReadDrawnKeptAndWorkedOutAgain() throws Exception {
    Path edges = folder.resolve("edges.csv");
    Path picture = folder.resolve("disc.png");
    assertThat(
            execute(
                "",
                "disc",
                "read",
                "--practice",
                "--edges",
                edges.toString(),
                "--picture",
                picture.toString()))
        .as(printed())
        .isZero();
    String first = printed();
    System.out.println(first);
    assertThat(first)
        .contains("a spinning disc cuts")
        .contains("practice rig: invented shutter, simulated figures")
        .contains("slot, degrees")
        .contains("57.60")
        .contains("The clock cancels out")
        .contains("No profile of this rig is used");
    assertThat(picture).isNotEmptyFile();
    Files.createDirectories(Path.of("target/disc"));
    Files.write(Path.of("target/disc/disc.png"), Files.readAllBytes(picture));

    // The same edges come to the same table, without a rig.
    assertThat(execute("", "disc", "read", "--from", edges.toString())).isZero();
    String again = printed();
    assertThat(again.lines().filter(line -> line.startsWith("14.40")).toList())
        .isEqualTo(first.lines().filter(line -> line.startsWith("14.40")).toList())
        .hasSize(1);
    Files.writeString(edges, Files.readString(edges).replace("PRACTICE,full", "PRACTICE,"));
    assertThat(execute("", "disc", "read", "--from", edges.toString())).isEqualTo(1);
    assertThat(printed()).contains("is not a file of a disc's edges");
  }

  @Test
  void aKnownSpeedBringsTheRateOfTheClockIntoTheProfile() throws Exception {
    assertThat(execute("", "disc", "read", "--practice", "--keep")).isEqualTo(1);
    assertThat(printed()).contains("give it with --rpm");
    Path given = folder.resolve("given.profile");
    Files.writeString(given, ProfileFile.write(PROFILE));
    assertThat(execute("", "profile", "import", given.toString())).isZero();
    assertThat(execute("", "disc", "read", "--practice", "--rpm", "600", "--keep"))
        .as(printed())
        .isZero();
    assertThat(printed())
        .contains("a slotted disc of known speed")
        .contains("Edges are corrected by the profile of 1970-01-01.");
    ClockRate kept =
        new ProfileStore(folder).newest("PRACTICE").orElseThrow().clock().orElseThrow();
    assertThat(kept.source()).isEqualTo(ClockRate.Source.DISC);
    // The invented motor creeps and wanders by a few ten-thousandths from its 600 turns.
    assertThat(Math.abs(kept.fastPpm())).isLessThan(3000);
    assertThat(kept.standardUncertaintyPpm()).isGreaterThan(576);
  }

  private static final RigProfile PROFILE =
      new RigProfile(
          new ProfiledRig("PRACTICE", "full", "practice-1"),
          LocalDate.EPOCH,
          new LightRange(8, 700, 900),
          Optional.empty(),
          Map.of(),
          Optional.empty(),
          Optional.empty(),
          Map.of(),
          Map.of(),
          OptionalDouble.empty());

  @Test
  void thePersonIsLedStepByStepAndMayGiveUp() {
    assertThat(execute("\n\nq\n", "disc", "read", "--port", folder.resolve("none").toString()))
        .isEqualTo(1);
    assertThat(printed())
        .contains("a spinning disc cuts")
        .contains("1. Motor off")
        .contains("3. Turn the dark")
        .doesNotContain("4. Glasses")
        .contains("Touch nothing until it has stopped");
  }

  @Test
  void anglesAndFiguresThatCannotBeAreSaid() {
    assertThat(execute("", "disc", "read", "--practice", "--slots", "3,7,14")).isEqualTo(1);
    assertThat(printed()).contains("five measured angles");
    assertThat(execute("", "disc", "read", "--practice", "--radius", "0")).isEqualTo(1);
    assertThat(printed()).contains("must be above 0");
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private int execute(String typed, String... words) {
    out.reset();
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return Halflight.execute(
        new Surroundings(
            new Terminal(print, new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8))),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.EPOCH,
            folder,
            "test"),
        words);
  }
}
