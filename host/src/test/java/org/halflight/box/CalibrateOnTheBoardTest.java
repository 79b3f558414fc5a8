package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.profile.ClockRate;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Calibration and rig check as commands on the simulated board. All figures are simulated. */
@ExtendWith(AvrTools.class)
@Tag("board")
class CalibrateOnTheBoardTest {
  private static final List<String> BENCH =
      List.of("light all 40 4000", "led all 3800", "lag all 1", BenchInABox.NAMED);

  @TempDir private Path folder;

  @Test
  void aRigIsCalibratedAndCheckedAndSaysWhatItDoes() throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, BENCH)) {
      List<String> said = new ArrayList<>();
      Path fit = folder.resolve("fit.png");
      Path left = folder.resolve("left.png");
      Path kept = folder.resolve("rig.profile");
      assertThat(
              execute(
                  box,
                  said,
                  "never",
                  "calibrate",
                  "--clock-seconds",
                  "25",
                  "--fit",
                  fit.toString(),
                  "--residuals",
                  left.toString(),
                  "--out",
                  kept.toString(),
                  "--port",
                  box.port()))
          .as(said.toString())
          .isZero();
      assertThat(said)
          .anyMatch(line -> line.startsWith("Sweeping the thresholds"))
          .anyMatch(line -> line.equals("50 % done"))
          .anyMatch(line -> line.contains("simulated board"))
          .anyMatch(line -> line.startsWith("The front end lags by"))
          .anyMatch(line -> line.contains("would be found nine times out of ten"))
          .anyMatch(line -> line.startsWith("The clock is"));
      assertThat(fit).isNotEmptyFile();
      assertThat(left).isNotEmptyFile();
      assertThat(isDark(box)).isTrue();

      List<String> checked = new ArrayList<>();
      Path chart = folder.resolve("check.png");
      assertThat(
              execute(
                  box,
                  checked,
                  "never",
                  "check",
                  "--chart",
                  chart.toString(),
                  "--port",
                  box.port()))
          .as(checked.toString())
          .isZero();
      assertThat(checked).anyMatch(line -> line.startsWith("In control"));
      assertThat(chart).isNotEmptyFile();

      wrongProfiles(box, kept);

      // A front end that has become slow since: the check is there to find that.
      box.say("lag all 30");
      List<String> signal = new ArrayList<>();
      int code = execute(box, signal, "never", "check", "--port", box.port());
      System.out.println("simulated: " + signal);
      assertThat(code).as(signal.toString()).isEqualTo(1);
      assertThat(signal).last().asString().startsWith("The two levels have moved apart");
    }
  }

  /** Profiles that must not be used, each with its sentence. */
  private void wrongProfiles(BenchInABox box, Path kept) throws Exception {
    String text = Files.readString(kept);
    refused(box, text.replace("kind = full", "kind = small"), "was changed after it was written");
    refused(box, text.substring(0, text.length() - 30), "The end of the profile");
    refused(box, "{}", "is not a rig profile");
    Path other = folder.resolve("other.profile");
    RigProfile ours = ((ProfileFile.Read) ProfileFile.read(text)).profile();
    ProfileStore.write(
        new RigProfile(
            new ProfiledRig("BOX-0002", "full", ours.rig().firmware()),
            ours.date(),
            ours.light(),
            ours.thresholds(),
            ours.tripPoints(),
            ours.clock(),
            ours.lag(),
            ours.delays(),
            ours.lines(),
            ours.shortestTrustworthySeconds()),
        OutFiles.neverReplacing().file(other, FileKind.PROFILE));
    List<String> said = new ArrayList<>();
    assertThat(
            execute(
                box, said, "never", "check", "--profile", other.toString(), "--port", box.port()))
        .isEqualTo(1);
    assertThat(String.join("\n", said))
        .contains("belongs to another rig")
        .contains("Calibrate this rig");
  }

  private void refused(BenchInABox box, String text, String words) throws Exception {
    Path wrong = Files.writeString(folder.resolve("wrong.profile"), text);
    List<String> said = new ArrayList<>();
    assertThat(
            execute(
                box, said, "never", "check", "--profile", wrong.toString(), "--port", box.port()))
        .isEqualTo(1);
    assertThat(String.join("\n", said)).contains(words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "light all 40 4000|led all 0|Is it plugged in",
        "light all 40 4000|led all 4980|end of its scale",
        "light all 3000 4000|led all -2500|wired the wrong way round",
        "light all 900 4000|led all 2500|switch the lamp off",
        "light all 40 4000|led all 300|too dim"
      })
  void wrongUseIsRefusedWithWhatToDo(String light, String led, String words) throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, List.of(light, led, BenchInABox.NAMED))) {
      List<String> said = new ArrayList<>();
      assertThat(
              execute(
                  box, said, "never", "calibrate", "--clock-seconds", "0", "--port", box.port()))
          .isEqualTo(1);
      assertThat(String.join("\n", said)).contains(words);
      assertThat(isDark(box)).isTrue();
      assertThat(Files.exists(folder.resolve("profiles"))).isFalse();
    }
  }

  @Test
  void itCanBeStoppedAndLeavesTheRigInOrder() throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, BENCH)) {
      List<String> said = new ArrayList<>();
      assertThat(execute(box, said, "Making reference pulses", "calibrate", "--port", box.port()))
          .isEqualTo(1);
      assertThat(said).last().asString().startsWith("You ended it.");
      isDarkAndStays(box);

      endedFromOutside(box);
      isDarkAndStays(box);
      List<String> rigs = new ArrayList<>();
      assertThat(execute(box, rigs, "never", "rigs", "--port", box.port())).isZero();
      assertThat(String.join("\n", rigs)).contains("BOX-0001");
    }
  }

  /** A generator of 100 Hz on the flash contact's input tells the rate, kept with its source. */
  @Test
  void edgesFromOutsideTellTheRateOfTheClock() throws Exception {
    List<String> bench = new ArrayList<>(List.of("clock 3450 0"));
    bench.addAll(BENCH);
    try (BenchInABox box = BenchInABox.start(folder, bench)) {
      RigProfile before =
          InventedProfiles.bare(
              new ProfiledRig("BOX-0001", "full", "1.2.0"),
              LocalDate.EPOCH,
              new LightRange(8, 780, 780));
      ProfileStore shelf = new ProfileStore(folder);
      shelf.keep(before);
      box.say("burst +0.5 contact 20000 5000");
      List<String> said = new ArrayList<>();
      assertThat(
              execute(
                  box,
                  said,
                  "never",
                  "clock",
                  "--source",
                  "generator",
                  "--hertz",
                  "100",
                  "--source-ppm",
                  "1",
                  "--seconds",
                  "10",
                  "--keep",
                  "--port",
                  box.port()))
          .as(said.toString())
          .isZero();
      ClockRate rate = shelf.newest("BOX-0001").orElseThrow().clock().orElseThrow();
      System.out.printf("simulated: 3450 ppm by a generator: %s%n", rate);
      assertThat(rate.fastPpm()).isCloseTo(3450, within(2 * rate.standardUncertaintyPpm()));
      assertThat(rate.standardUncertaintyPpm()).isLessThan(2);
      assertThat(rate.source()).isEqualTo(ClockRate.Source.GENERATOR);
      assertThat(said).anyMatch(line -> line.contains("compared with a generator"));

      List<String> none = new ArrayList<>();
      assertThat(
              execute(
                  box,
                  none,
                  "never",
                  "clock",
                  "--input",
                  "click",
                  "--seconds",
                  "2",
                  "--port",
                  box.port()))
          .isEqualTo(1);
      assertThat(none).last().asString().startsWith("Only 0 edges came");
    }
  }

  /** The program in a process of its own, ended by a signal while the LED is on. */
  private void endedFromOutside(BenchInABox box) throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                CommandOnTheBoard.class.getName(),
                box.clockFile().toString(),
                folder.toString(),
                "calibrate",
                "--port",
                box.port())
            .redirectErrorStream(true)
            .start();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      List<String> said = new ArrayList<>();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        said.add(line);
        if (line.startsWith("Sweeping the thresholds")) {
          // Process.destroy() would close what it says, too.
          new ProcessBuilder("kill", "-TERM", Long.toString(process.pid())).start().waitFor();
        }
      }
      // It says no more, so it is about to end.
      process.waitFor();
      assertThat(said).anyMatch(line -> line.startsWith("Sweeping the thresholds"));
    }
  }

  /** Whether the last that the board did with its LED was to switch it off. */
  private static boolean isDark(BenchInABox box) throws IOException {
    List<String> drives = drives(box);
    return drives.isEmpty() || drives.get(drives.size() - 1).endsWith(" 0");
  }

  /** No pulse follows; the board itself says when some time has gone by. */
  private void isDarkAndStays(BenchInABox box) throws Exception {
    assertThat(isDark(box)).as("last of %s", drives(box)).isTrue();
    int before = drives(box).size();
    assertThat(execute(box, new ArrayList<>(), "never", "rigs", "--port", box.port())).isZero();
    assertThat(drives(box)).hasSize(before);
  }

  private static List<String> drives(BenchInABox box) throws IOException {
    return box.log().stream().filter(line -> line.startsWith("led ")).toList();
  }

  /**
   * Executes a command.
   *
   * @param stopAt types {@code q} when a line begins with it
   */
  private int execute(BenchInABox box, List<String> said, String stopAt, String... words)
      throws Exception {
    return TypedCommand.execute(
        box,
        folder,
        said,
        (line, keyboard) -> {
          if (line.startsWith(stopAt)) {
            keyboard.type("q");
          }
        },
        words);
  }
}
