package org.halflight.app;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.desk.Desk;
import org.halflight.desk.DeskSurroundings;
import org.halflight.files.FaultLog;
import org.halflight.files.NativeLibraries;
import org.halflight.link.HostClockProbe;
import org.halflight.link.serial.SerialPorts;
import org.halflight.record.DataFolder;
import org.halflight.words.Words;

/** Starts Halflight: the window where there is a display, and else the terminal. */
public final class Main {
  private static final long PRACTICE_SEED = 20;
  private static final String HEADLESS = "java.awt.headless";

  private Main() {}

  public static void main(String[] args) {
    FaultLog faults = new FaultLog(folder(), Instant::now);
    Thread.setDefaultUncaughtExceptionHandler(
        (thread, fault) ->
            System.err.println(
                faults.goesOn(fault, Words.say("fault.at.thread", thread.getName()))));
    int[] code = new int[1];
    int started =
        new StartUp(faults, System.err::println)
            .run(
                () -> {
                  NativeLibraries.keepIn(cache());
                  code[0] = isForWindow(args) ? window(faults) : terminal(args);
                });
    System.exit(started == 0 ? code[0] : started);
  }

  /** Whether the window is asked for and there is a display that answers. */
  private static boolean isForWindow(String... args) {
    if (args.length > 0) {
      // Pictures are drawn all the same, and a display that is dead must not hinder them.
      System.setProperty(HEADLESS, "true");
      return false;
    }
    Optional<String> display = display();
    if (display.flatMap(DisplayName::of).filter(name -> !name.answers()).isPresent()) {
      System.err.println(Words.say("start.deadDisplay", display.get()));
      System.setProperty(HEADLESS, "true");
      return false;
    }
    return !GraphicsEnvironment.isHeadless();
  }

  /** The display of the X Window System; empty on systems with another one. */
  private static Optional<String> display() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    return system.startsWith("windows") || system.startsWith("mac") || Boolean.getBoolean(HEADLESS)
        ? Optional.empty()
        : Optional.ofNullable(System.getenv("DISPLAY")).filter(name -> !name.isBlank());
  }

  private static int window(FaultLog faults) {
    Desk.prepare();
    try {
      GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice();
    } catch (AWTError | HeadlessException | LinkageError refused) {
      faults.ends(refused, Words.say("fault.at.start"));
      System.err.println(Words.say("start.noWindow", display().orElse("")));
      return 1;
    }
    return new StartUp(faults, Main::sayOnScreen)
        .run(
            () ->
                Desk.open(
                    new DeskSurroundings(
                        folder(),
                        () -> new SerialPorts(List.of()),
                        System::nanoTime,
                        clock(),
                        version(),
                        PRACTICE_SEED,
                        hostClock())));
  }

  /** Who starts the program by its icon sees no terminal. */
  private static void sayOnScreen(String sentence) {
    System.err.println(sentence);
    try {
      Desk.sayItDidNotStart(sentence);
    } catch (RuntimeException | Error noDialog) {
      // It was said in the terminal.
      return;
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

  /** Days begin at midnight where the computer stands. */
  static Clock clock() {
    return Clock.system(ZoneId.systemDefault());
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
