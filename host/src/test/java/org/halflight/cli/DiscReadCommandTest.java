package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.halflight.link.Ports;
import org.halflight.link.serial.SerialPorts;
import org.halflight.profile.ClockRate;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on the practice rig; all figures are simulated. */
class DiscReadCommandTest {
  @TempDir private Path folder;

  /** What is typed when a line was said; null for nothing. */
  private UnaryOperator<String> typist = line -> null;

  private Function<List<String>, Ports> given = SerialPorts::new;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  @Test
  void thePracticeDiscIsReadDrawnKeptAndWorkedOutAgain() throws Exception {
    Path edges = folder.resolve("edges.csv");
    Path picture = folder.resolve("disc.png");
    assertThat(
            execute(
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
    assertThat(execute("disc", "read", "--from", edges.toString())).isZero();
    String again = printed();
    assertThat(again.lines().filter(line -> line.startsWith("14.40")).toList())
        .isEqualTo(first.lines().filter(line -> line.startsWith("14.40")).toList())
        .hasSize(1);
    Files.writeString(edges, Files.readString(edges).replace("PRACTICE,full", "PRACTICE,"));
    assertThat(execute("disc", "read", "--from", edges.toString())).isEqualTo(1);
    assertThat(printed()).contains("is not a file of a disc's edges");
  }

  @Test
  void aKnownSpeedBringsTheRateOfTheClockIntoTheProfile() throws Exception {
    assertThat(execute("disc", "read", "--practice", "--keep")).isEqualTo(1);
    assertThat(printed()).contains("give it with --rpm");
    Path given = folder.resolve("given.profile");
    Files.writeString(given, ProfileFile.write(PROFILE));
    assertThat(execute("profile", "import", given.toString())).isZero();
    assertThat(execute("disc", "read", "--practice", "--rpm", "600", "--keep"))
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
      InventedProfiles.bare(
          new ProfiledRig("PRACTICE", "full", "practice-1"),
          LocalDate.EPOCH,
          new LightRange(8, 700, 900));

  @Test
  void thePersonIsLedStepByStepAndMayGiveUp() throws IOException {
    given = named -> new PracticePorts(rig());
    typist = line -> line.matches("[12]\\. .*") ? "" : line.startsWith("3. ") ? "q" : null;
    assertThat(execute("disc", "read")).isEqualTo(1);
    assertThat(printed())
        .contains("a spinning disc cuts")
        .contains("1. Motor off")
        .contains("3. Turn the dark")
        .contains("You ended it")
        .doesNotContain("4. Glasses")
        .doesNotContain("Touch nothing until it is at rest");
  }

  @Test
  void onARigTheStepsAreSaidTheDiscIsReadAndTheMotorComesOffBeforeTheTable() throws IOException {
    given =
        named -> {
          PracticeRig rig = rig();
          rig.turnDisc(TurningDisc.invented(20));
          return new PracticePorts(rig);
        };
    typist = line -> line.matches("[1-5]\\. .*") ? "" : null;
    assertThat(execute("disc", "read", "--seconds", "4")).as(printed()).isZero();
    assertThat(printed())
        .containsSubsequence(
            "a spinning disc cuts",
            "1. Motor off",
            "5. Start the motor",
            "Reading the disc, about 7 s",
            "Recording the edges",
            "75 % done",
            "Touch nothing until it is at rest",
            "slot, degrees");
  }

  private static PracticeRig rig() {
    return PracticeRig.unpaced(
        InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3);
  }

  @Test
  void anglesAndFiguresThatCannotBeAreSaid() throws IOException {
    assertThat(execute("disc", "read", "--practice", "--slots", "3,7,14")).isEqualTo(1);
    assertThat(printed()).contains("five measured angles");
    assertThat(execute("disc", "read", "--practice", "--radius", "0")).isEqualTo(1);
    assertThat(printed()).contains("must be above 0");
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private int execute(String... words) throws IOException {
    out.reset();
    PipedOutputStream keyboard = new PipedOutputStream();
    PrintWriter keys = new PrintWriter(keyboard, true, StandardCharsets.UTF_8);
    PrintStream print =
        new PrintStream(out, true, StandardCharsets.UTF_8) {
          @Override
          public void println(String line) {
            super.println(line);
            Optional.ofNullable(typist.apply(line)).ifPresent(keys::println);
          }
        };
    try (keyboard) {
      return Halflight.execute(
          new Surroundings(
              new Terminal(print, new PipedInputStream(keyboard)),
              given,
              System::nanoTime,
              () -> Instant.EPOCH,
              folder,
              "test"),
          words);
    }
  }
}
