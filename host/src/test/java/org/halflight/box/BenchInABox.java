package org.halflight.box;

import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.halflight.signal.LightCurve;

/**
 * The real firmware in its simulator, with its serial line on a pseudo-terminal that the host opens
 * like any port. All figures from it are simulated.
 *
 * <p>The bench goes by a time of its own, {@link #nanos}, which a host gets in place of the
 * computer's: then nothing hangs on how fast or how busy the computer is.
 */
public final class BenchInABox implements AutoCloseable {
  /**
   * A line of a scenario that gives the board a serial number, by which it is known as simulated.
   */
  public static final String NAMED = "tx 0.05 i 0001 BOX-0001#";

  /** How many times faster than life a board goes, unless a test says otherwise. */
  private static final double FASTER = 3;

  /** What nothing on a simulated board takes, in its own time. */
  private static final long LIMIT_NANOS = TimeUnit.MINUTES.toNanos(10);

  private static final Pattern DONE_NAMING = Pattern.compile("^tx \\d+ A [0-9A-F]{4} 0001 00");

  private static boolean built;

  private final Process process;
  private final BufferedWriter input;
  private final Path folder;
  private final Path link;
  private final BoardClock clock;

  private BenchInABox(Process process, Path folder, Path link, BoardClock clock) {
    this.clock = clock;
    this.process = process;
    this.input =
        new BufferedWriter(
            new java.io.OutputStreamWriter(process.getOutputStream(), StandardCharsets.US_ASCII));
    this.folder = folder;
    this.link = link;
  }

  /**
   * Starts a simulated board with a serial number.
   *
   * @param folder an empty folder for its files
   * @param scenario lines of the scenario language of firmware/test/sim/README.md
   */
  public static BenchInABox start(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return start(folder, scenario, "full", FASTER);
  }

  /** The same, no faster than life. */
  public static BenchInABox startAsInLife(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return start(folder, scenario, "full", 1);
  }

  /** Starts a simulated small rig, likewise. */
  public static BenchInABox startSmall(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return start(folder, scenario, "small", FASTER);
  }

  /** Starts a simulated starter rig, likewise. */
  public static BenchInABox startStarter(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return start(folder, scenario, "starter", FASTER);
  }

  /** Starts a simulated small rig whose board has a common bootloader. */
  public static BenchInABox startWithBootloader(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return start(folder, scenario, "small", FASTER, "--boot", "firmware/build/boot/optiboot.hex");
  }

  private static BenchInABox start(
      Path folder, List<String> scenario, String rig, double pace, String... more)
      throws IOException, InterruptedException {
    mustBeBuilt();
    Path script = folder.resolve("scenario");
    Files.write(script, scenario);
    Path link = folder.resolve("port");
    List<String> command =
        new ArrayList<>(
            List.of(
                "firmware/build/bench",
                "--elf",
                "firmware/build/" + rig + "/rig.elf",
                "--scenario",
                script.toString(),
                "--log",
                folder.resolve("log").toString(),
                "--eeprom",
                folder.resolve("eeprom").toString(),
                "--link",
                link.toString(),
                "--clock",
                clockFile(folder).toString(),
                "--pace",
                String.valueOf(pace)));
    command.addAll(List.of(more));
    Process process =
        new ProcessBuilder(command).redirectError(folder.resolve("errors").toFile()).start();
    BufferedReader output =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String first = output.readLine();
    if (first == null || !first.startsWith("PORT ")) {
      process.destroy();
      throw new AssertionError(
          "the bench did not start: " + first + "\n" + Files.readString(folder.resolve("errors")));
    }
    BenchInABox box = new BenchInABox(process, folder, link, BoardClock.of(clockFile(folder)));
    if (scenario.contains(NAMED)) {
      box.waitUntilNamed();
    }
    return box;
  }

  private static Path clockFile(Path folder) {
    return folder.resolve("clock");
  }

  /** A host that looks for the name and asks before it was given takes the board for another. */
  private void waitUntilNamed() throws IOException, InterruptedException {
    Limit limit = limit();
    while (log().stream().noneMatch(line -> DONE_NAMING.matcher(line).find())) {
      if (process.waitFor(10, TimeUnit.MILLISECONDS) || limit.isOver()) {
        close();
        throw new AssertionError("the board did not take its name: " + log());
      }
    }
  }

  /** Until when something has to come; from now. */
  public Limit limit() {
    return new Limit(nanos() + LIMIT_NANOS);
  }

  /**
   * Until when something has to come: a limit in the time of the board, and the board must live.
   */
  public final class Limit {
    private final long untilNanos;

    private Limit(long untilNanos) {
      this.untilNanos = untilNanos;
    }

    /** Whether nothing more can come. */
    public boolean isOver() {
      return nanos() > untilNanos || !process.isAlive();
    }
  }

  /** Nanoseconds since the start of the bench, by its own time; to be handed to the host. */
  public long nanos() {
    return clock.getAsLong();
  }

  /**
   * Fails when the firmware or the simulator is not built from what the sources are now. Tests do
   * not build it themselves: two processes of tests would build the same files at the same time.
   */
  static synchronized void mustBeBuilt() throws IOException, InterruptedException {
    if (!built) {
      AvrTools.mustBeMade("firmware", "RIG=full", "build/full/rig.elf", "build/full/rig.hex");
      AvrTools.mustBeMade("firmware", "RIG=small", "build/small/rig.elf", "build/small/rig.hex");
      AvrTools.mustBeMade(
          "firmware", "RIG=starter", "build/starter/rig.elf", "build/starter/rig.hex");
      AvrTools.mustBeMade("firmware/test/sim", "all");
      built = true;
    }
  }

  /** The path of the port; stays the same when the pseudo-terminal behind it changes. */
  public String port() {
    return link.toString();
  }

  /** Where the bench publishes its time, for a program of its own. */
  Path clockFile() {
    return clockFile(folder);
  }

  /** The pseudo-terminal that the port stands for now. */
  public String realPort() throws IOException {
    return link.toRealPath().toString();
  }

  /** Says a line of the scenario language to the running bench. */
  public void say(String line) throws IOException {
    input.write(line);
    input.newLine();
    input.flush();
  }

  /** Gives the bench a light curve under a name. */
  public void curve(String name, LightCurve curve) throws IOException {
    double[] seconds = curve.seconds();
    double[] open = curve.open();
    StringBuilder text = new StringBuilder("curve ").append(name).append('\n');
    for (int i = 0; i < seconds.length; i++) {
      text.append(String.format(Locale.ROOT, "%.6f %.9f%n", seconds[i] * 1e6, open[i]));
    }
    say(text.append("end-curve").toString());
  }

  /** What was really injected so far, line by line. */
  public List<String> log() throws IOException {
    return new ArrayList<>(Files.readAllLines(folder.resolve("log")));
  }

  @Override
  public void close() throws IOException {
    process.destroy();
    try {
      if (!process.waitFor(5, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
    process.getInputStream().close();
  }
}
