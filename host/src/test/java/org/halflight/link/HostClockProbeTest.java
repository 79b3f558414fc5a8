package org.halflight.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.File;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.HostClock.Steered;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What systems print about their clocks. Samples of Windows and macOS are from memory. */
class HostClockProbeTest {
  @ParameterizedTest
  @CsvSource({
    "NTPSynchronized=yes,YES",
    "NTPSynchronized=no,NO",
    // What a system without that service says (read on one).
    "'System has not been booted with systemd as init system (PID 1). Can''t operate.',NOT_KNOWN",
    "'',NOT_KNOWN",
    "NTPSynchronized=,NOT_KNOWN"
  })
  void linux(String printed, Steered expected) {
    assertThat(HostClockProbe.timedatectl(printed + "\n")).isEqualTo(expected);
  }

  @Test
  void windowsInAnyLanguage() {
    String synchronous =
        """
        Leap Indicator: 0(no warning)
        Stratum: 4 (secondary reference - syncd by (S)NTP)
        Precision: -23 (119.209ns per tick)
        Root Delay: 0.0312500s
        ReferenceId: 0xC0000201 (source IP:  192.0.2.1)
        Last Successful Sync Time: 3/9/2026 9:12:03 AM
        """;
    assertThat(HostClockProbe.w32tm(synchronous)).isEqualTo(Steered.YES);
    assertThat(HostClockProbe.w32tm(synchronous.replace("\n", "\r\n"))).isEqualTo(Steered.YES);
    String german =
        """
        Sprungindikator: 0(keine Warnung)
        Stratum: 4 (Sekundaerreferenz)
        """;
    assertThat(HostClockProbe.w32tm(german)).isEqualTo(Steered.YES);
    String never =
        """
        Leap Indicator: 3(not synchronized)
        Stratum: 0 (unspecified)
        Source: Local CMOS Clock
        """;
    assertThat(HostClockProbe.w32tm(never)).isEqualTo(Steered.NO);
    String byItself =
        """
        Leap Indicator: 0(no warning)
        Stratum: 1 (primary reference - syncd by radio clock)
        ReferenceId: 0x4C4F434C (source name:  "LOCL")
        """;
    assertThat(HostClockProbe.w32tm(byItself)).isEqualTo(Steered.NO);
    assertThat(
            HostClockProbe.w32tm(
                "The following error occurred: The service has not been started. (0x80070426)"))
        .isEqualTo(Steered.NO);
    assertThat(HostClockProbe.w32tm("The following error occurred: Access is denied.\n"))
        .isEqualTo(Steered.NOT_KNOWN);
    assertThat(HostClockProbe.w32tm("")).isEqualTo(Steered.NOT_KNOWN);
  }

  @ParameterizedTest
  @CsvSource({
    "Network Time: On,YES",
    "Network Time: Off,NO",
    "You need administrator access to run this tool... exiting!,NOT_KNOWN"
  })
  void mac(String printed, Steered expected) {
    assertThat(HostClockProbe.systemsetup(printed + "\n")).isEqualTo(expected);
  }

  /** A rectangle of a is a over the root of 3 (JCGM 100:2008, 4.3.7). */
  @Test
  void onlyASteeredClockThatStampsFollowIsWorthMore() {
    double quartz = 50 / Math.sqrt(3);
    assertThat(HostClock.NOT_KNOWN.standardUncertaintyPpm()).isCloseTo(quartz, within(1e-9));
    assertThat(new HostClock(Steered.NO, true).standardUncertaintyPpm())
        .isCloseTo(quartz, within(1e-9));
    assertThat(new HostClock(Steered.YES, false).standardUncertaintyPpm())
        .isCloseTo(quartz, within(1e-9));
    assertThat(new HostClock(Steered.YES, true).standardUncertaintyPpm())
        .isCloseTo(20 / Math.sqrt(3), within(1e-9));
  }

  @Test
  void aSystemThatNobodyKnowsIsNotAsked() {
    assertThat(new HostClockProbe("Plan 9").get()).isEqualTo(HostClock.NOT_KNOWN);
  }

  @Test
  void aProgramIsAskedForALimitedTimeAndMayBeMissing() {
    BoundedCall patient = new BoundedCall(Duration.ofDays(1));
    assertThat(patient.printed(java(Answers.class)).orElseThrow()).contains("answer");
    assertThat(patient.printed(List.of("no-such-program-of-any-system"))).isEmpty();
    BoundedCall hurried = new BoundedCall(Duration.ofMillis(300));
    assertThat(hurried.printed(java(PrintsWithoutEnd.class))).isEmpty();
  }

  private static List<String> java(Class<?> main) {
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-cp",
        Path.of("target", "test-classes")
            + File.pathSeparator
            + System.getProperty("java.class.path"),
        main.getName());
  }

  /** Answers at once. */
  public static final class Answers {
    private Answers() {}

    public static void main(String[] args) {
      new PrintStream(System.out).println("answer");
    }
  }

  /** Never comes to an end. */
  public static final class PrintsWithoutEnd {
    private PrintsWithoutEnd() {}

    public static void main(String[] args) {
      while (true) {
        System.out.println("and so on");
      }
    }
  }
}
