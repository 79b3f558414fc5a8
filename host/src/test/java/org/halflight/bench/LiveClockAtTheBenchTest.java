package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.HostClock.Steered;
import org.halflight.calibration.LiveClock;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.profile.ClockRate;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The board's clock held against the host's during a session. Rig, shutter and delays are invented;
 * that resonators of common boards are off by as much as 3450 ppm was seen in the field.
 */
class LiveClockAtTheBenchTest {
  private static final double FAST_PPM = 3450;
  private static final double EFFECTIVE = 1.0 / 64;
  private static final HostClock STEERED = new HostClock(Steered.YES, true);

  @TempDir private Path folder;

  private BenchDriver driver(FastRig rig, Path file) {
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file),
            () -> Math.round(rig.trueSeconds() * 1e9),
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    return new BenchDriver(workbench, rig).watchesClock(() -> STEERED);
  }

  private static void goOn(BenchDriver driver, FastRig rig, double seconds) {
    double until = rig.trueSeconds() + seconds;
    while (rig.trueSeconds() < until) {
      driver.step();
    }
  }

  private static Session session(BenchDriver driver) {
    return driver.workbench().fold().session();
  }

  private static void begin(BenchDriver driver) {
    LevelPair levels = LevelPair.GAUSS;
    driver.handle(
        new SessionInput.LightSet(
            new LightLevels(20, 820, 20 + 800 * levels.low(), 20 + 800 * levels.high())));
    driver.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented",
                Phase.AS_LEFT,
                "leaf",
                List.of(MarkedSpeed.parse("1/60")),
                Reference.EXACT,
                9)));
  }

  private static double seconds(FiringResult firing) {
    return firing.effectiveSeconds().orElseThrow();
  }

  @Test
  void theRateIsFoundWhileMeasuringCorrectsTimesAndIsKept() {
    Path file = folder.resolve("a.session");
    FastRig rig = new FastRig("R-0001", FAST_PPM, 5);
    List<FiringResult> live;
    try (BenchDriver driver = driver(rig, file)) {
      goOn(driver, rig, 1);
      begin(driver);
      rig.fire(EFFECTIVE);
      goOn(driver, rig, 1);
      assertThat(driver.clock()).isInstanceOf(LiveClock.TooFew.class);
      goOn(driver, rig, 40);
      rig.fire(EFFECTIVE);
      goOn(driver, rig, 90);
      assertThat(driver.clock()).isInstanceOf(LiveClock.Known.class);
      LiveClock.Known known = (LiveClock.Known) driver.clock();
      ClockRate rate = known.rate();
      // The doubt of a steered host rules; the pings' own is far less.
      assertThat(rate.standardUncertaintyPpm()).isBetween(11.5, 13.0);
      assertThat(rate.fastPpm()).isCloseTo(FAST_PPM, within(3.0));
      assertThat(known.pings()).isBetween(60, 120);
      rig.fire(EFFECTIVE);
      goOn(driver, rig, 1);
      live = session(driver).results();
      assertThat(driver.workbench().fold().linkStatistics().missing()).isZero();
    }
    // About one a second.
    assertThat(rig.pings()).hasSizeBetween(100, 135);
    assertThat(live).hasSize(3);
    assertThat(seconds(live.get(0))).isCloseTo(EFFECTIVE * 1.00345, within(0.2e-6));
    assertThat(seconds(live.get(1))).isCloseTo(EFFECTIVE, within(0.3e-6));
    assertThat(seconds(live.get(2))).isCloseTo(EFFECTIVE, within(0.2e-6));
    assertThat(SessionReducer.replay(SessionFile.read(file).events()).session().results())
        .isEqualTo(live);
  }

  @Test
  void nothingIsSentWhileTheShutterIsOpen() {
    FastRig rig = new FastRig("R-0001", FAST_PPM, 6);
    try (BenchDriver driver = driver(rig, folder.resolve("b.session"))) {
      goOn(driver, rig, 5);
      begin(driver);
      double from = rig.trueSeconds();
      rig.fire(8);
      goOn(driver, rig, 12);
      assertThat(session(driver).results()).hasSize(1);
      assertThat(rig.pings())
          .noneMatch(at -> at > from + 0.3 && at < from + 8)
          .anyMatch(at -> at > from + 8.5);
    }
  }

  @Test
  void theLightIsSetWithoutPingsBetween() {
    FastRig rig = new FastRig("R-0001", FAST_PPM, 7);
    try (BenchDriver driver = driver(rig, folder.resolve("c.session"))) {
      goOn(driver, rig, 5);
      driver.light().set();
      int before = rig.pings().size();
      double from = rig.trueSeconds();
      while (driver.light().isUnderWay()) {
        driver.step();
        assertThat(rig.pings()).hasSize(before);
      }
      assertThat(rig.trueSeconds()).as("it took longer than a ping waits").isGreaterThan(from + 2);
    }
  }

  @Test
  void thePracticeRigIsNotPingedAndASimulatedBoardCorrectsNothing() {
    FastRig practice = new FastRig("PRACTICE", FAST_PPM, 8);
    try (BenchDriver driver = driver(practice, folder.resolve("d.session"))) {
      goOn(driver, practice, 40);
      assertThat(practice.pings()).isEmpty();
      assertThat(driver.clock()).isInstanceOf(LiveClock.NotComparable.class);
    }
    FastRig simulated = new FastRig("BOX-0001", FAST_PPM, 9);
    try (BenchDriver driver = driver(simulated, folder.resolve("e.session"))) {
      goOn(driver, simulated, 60);
      assertThat(driver.clock()).isInstanceOf(LiveClock.Known.class);
      assertThat(session(driver).profileUse().state().liveClock()).isEmpty();
    }
  }

  /** Whoever goes on with the session is in another room, perhaps on another day. */
  @Test
  void whatGoesOnLaterBeginsWithoutARate() {
    Path file = folder.resolve("f.session");
    FastRig rig = new FastRig("R-0001", FAST_PPM, 10);
    try (BenchDriver driver = driver(rig, file)) {
      goOn(driver, rig, 60);
      assertThat(session(driver).profileUse().state().liveClock()).isPresent();
    }
    Workbench again =
        Workbench.resume(
            SessionFile.resume(file),
            () -> 0,
            SessionFile.read(file).events(),
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    assertThat(again.fold().session().profileUse().state().liveClock()).isEmpty();
    again.close();
  }
}
