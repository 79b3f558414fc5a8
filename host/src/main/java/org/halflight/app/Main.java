package org.halflight.app;

import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.desk.Desk;
import org.halflight.desk.DeskSurroundings;
import org.halflight.files.NativeLibraries;
import org.halflight.link.HostClockProbe;
import org.halflight.link.serial.SerialPorts;
import org.halflight.record.DataFolder;
import org.halflight.trouble.Trouble;

/** Starts Halflight: the window where there is a display, and else the terminal. */
public final class Main {
  private static final long PRACTICE_SEED = 20;

  private Main() {}

  public static void main(String[] args) {
    NativeLibraries.keepIn(cache());
    System.exit(args.length == 0 && !GraphicsEnvironment.isHeadless() ? window() : terminal(args));
  }

  private static int window() {
    try {
      Desk.open(
          new DeskSurroundings(
              folder(),
              () -> new SerialPorts(List.of()),
              System::nanoTime,
              Clock.systemUTC(),
              version(),
              PRACTICE_SEED,
              hostClock()));
      return 0;
    } catch (Trouble trouble) {
      System.err.println(trouble.getMessage());
      return 1;
    }
  }

  private static int terminal(String[] args) {
    Surroundings surroundings =
        new Surroundings(
            new Terminal(System.out, System.in),
            SerialPorts::new,
            System::nanoTime,
            Instant::now,
            folder(),
            version(),
            hostClock());
    return Halflight.execute(surroundings, args);
  }

  private static Path folder() {
    return Path.of(
        DataFolder.of(
            System.getProperty("os.name"), System.getenv(), System.getProperty("user.home")));
  }

  private static Path cache() {
    return Path.of(
        DataFolder.cache(
            System.getProperty("os.name"), System.getenv(), System.getProperty("user.home")));
  }

  private static HostClockProbe hostClock() {
    return new HostClockProbe(System.getProperty("os.name", ""));
  }

  private static String version() {
    return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
        .orElse("from source");
  }
}
