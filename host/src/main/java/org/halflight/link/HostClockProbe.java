package org.halflight.link;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.HostClock.Steered;

/**
 * Whether a time service steers the clock of this computer, as far as the system tells. Asked once,
 * in the background: until there is an answer it is not known. Safe for use by several threads.
 */
public final class HostClockProbe implements Supplier<HostClock> {
  private static final Duration PATIENCE = Duration.ofSeconds(3);

  /** The reference of a Windows clock that only follows itself: 'LOCL'. */
  private static final String ITSELF = "0x4C4F434C";

  /** Windows has no time service running. */
  private static final String NOT_STARTED = "0x80070426";

  private static final Pattern LINE_NUMBER = Pattern.compile("[^:\\n]*: *(\\d+) *\\(.*");

  private static final int NOT_SYNCHRONIZED = 3;
  private static final int STRATUM_MOST = 15;

  private final String system;
  private volatile HostClock answer = HostClock.NOT_KNOWN;
  private final AtomicBoolean asked = new AtomicBoolean();

  /**
   * @param system its name, as {@code os.name} has it
   */
  public HostClockProbe(String system) {
    this.system = system.toLowerCase(Locale.ROOT);
  }

  @Override
  public HostClock get() {
    if (asked.compareAndSet(false, true)) {
      Thread thread = new Thread(() -> answer = ask(), "halflight-host-clock");
      thread.setDaemon(true);
      thread.start();
    }
    return answer;
  }

  private HostClock ask() {
    BoundedCall call = new BoundedCall(PATIENCE);
    if (system.startsWith("linux")) {
      return new HostClock(
          call.printed(List.of("timedatectl", "show", "-p", "NTPSynchronized"))
              .map(HostClockProbe::timedatectl)
              .orElse(Steered.NOT_KNOWN),
          true);
    }
    if (system.startsWith("windows")) {
      return new HostClock(
          call.printed(List.of("w32tm", "/query", "/status"))
              .map(HostClockProbe::w32tm)
              .orElse(Steered.NOT_KNOWN),
          false);
    }
    if (system.startsWith("mac")) {
      return new HostClock(
          call.printed(List.of("/usr/sbin/systemsetup", "-getusingnetworktime"))
              .map(HostClockProbe::systemsetup)
              .orElse(Steered.NOT_KNOWN),
          false);
    }
    return HostClock.NOT_KNOWN;
  }

  /** {@code NTPSynchronized=yes}: the kernel's clock is being steered, by whichever service. */
  static Steered timedatectl(String printed) {
    return printed
        .lines()
        .map(String::strip)
        .map(
            line ->
                switch (line) {
                  case "NTPSynchronized=yes" -> Steered.YES;
                  case "NTPSynchronized=no" -> Steered.NO;
                  default -> Steered.NOT_KNOWN;
                })
        .filter(said -> said != Steered.NOT_KNOWN)
        .findFirst()
        .orElse(Steered.NOT_KNOWN);
  }

  /**
   * Windows prints in its own language, so only numbers are read: the leap indicator in the first
   * line, 3 where nothing was synchronized, and the stratum in the second, 0 where there is none.
   */
  static Steered w32tm(String printed) {
    if (printed.contains(NOT_STARTED) || printed.contains(ITSELF)) {
      return Steered.NO;
    }
    List<String> lines = printed.lines().filter(line -> !line.isBlank()).toList();
    Optional<Integer> leap = number(lines, 0);
    Optional<Integer> stratum = number(lines, 1);
    if (leap.isEmpty() || stratum.isEmpty()) {
      return Steered.NOT_KNOWN;
    }
    return leap.get() < NOT_SYNCHRONIZED && stratum.get() >= 1 && stratum.get() <= STRATUM_MOST
        ? Steered.YES
        : Steered.NO;
  }

  private static Optional<Integer> number(List<String> lines, int line) {
    if (lines.size() <= line) {
      return Optional.empty();
    }
    Matcher matcher = LINE_NUMBER.matcher(lines.get(line));
    return matcher.matches() && matcher.group(1).length() < 4
        ? Optional.of(Integer.parseInt(matcher.group(1)))
        : Optional.empty();
  }

  /** Tells only an administrator; says then whether the time service is switched on. */
  static Steered systemsetup(String printed) {
    return switch (printed.strip()) {
      case "Network Time: On" -> Steered.YES;
      case "Network Time: Off" -> Steered.NO;
      default -> Steered.NOT_KNOWN;
    };
  }
}
