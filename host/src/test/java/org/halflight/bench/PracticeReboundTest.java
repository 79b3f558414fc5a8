package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.ReboundSeen;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.BladeStroke;
import org.halflight.shuttermodel.Bounce;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ReleaseTiming;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.SpeedBehaviour;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.ReboundWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The bench looks for a rebound that no edge can see, by itself; the truth is that of the model
 * shutter on the practice rig.
 */
class PracticeReboundTest {
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed S125 = MarkedSpeed.parse("1/125");
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");
  private static final List<MarkedSpeed> SPEEDS = List.of(S60, S125, S250, S500);
  private static final int FIRINGS = 3;
  private static final int MOST_STEPS = 200_000;

  /** A half sine of 1.35 ms that peaks at 0.15 of full light: below the low level. */
  private static final double PEAK = 0.15;

  private static final double WIDTH_MS = 1.35;
  private static final double TRUTH_SECONDS = PEAK * WIDTH_MS * 1e-3 * 2 / Math.PI;

  @TempDir private Path folder;

  private Session session = new Session();

  @Test
  void aFaintReboundIsFoundWithoutBeingAskedFor() {
    double share = TRUTH_SECONDS / S500.exactSeconds();
    Session live = measured(new Bounce(share, 1.6, WIDTH_MS));

    Session replayed =
        SessionReducer.replay(SessionFile.read(folder.resolve("a.session")).events()).session();
    for (Session each : List.of(live, replayed)) {
      ReboundOfRun run = ReboundOfRun.of(each.results());
      assertThat(run.lookedAt()).containsExactly(S125, S250);
      assertThat(run.isAlike()).isTrue();
      for (MarkedSpeed speed : run.lookedAt()) {
        double found = run.secondsAt().get(speed);
        System.out.printf(
            Locale.ROOT,
            "practice: rebound of %.4f ms found as %.4f ms at %s%n",
            1e3 * TRUTH_SECONDS,
            1e3 * found,
            speed.label());
        assertThat(found).isCloseTo(TRUTH_SECONDS, within(0.1 * TRUTH_SECONDS));
      }
      assertThat(run.secondsAt(S500).orElseThrow())
          .isCloseTo(TRUTH_SECONDS, within(0.1 * TRUTH_SECONDS));
      ReboundSeen seen = looks(each).get(0);
      assertThat(seen.peak()).isCloseTo(PEAK, within(0.01));
      assertThat(seen.startSeconds()).isCloseTo(1.6e-3, within(0.2e-3));
      assertThat(ReboundWords.ofRun(each.results()))
          .hasSize(2)
          .allMatch(said -> said.startsWith("Rebound by the light curve at 1/"));
    }
    // The tail's coarser closing makes no other exposure of it.
    assertThat(live.results())
        .filteredOn(FiringResult::isGood)
        .allMatch(firing -> firing.decidedBy().filter(by -> by != DecidedBy.CHECK_RIG).isPresent());
    // One look at each of two speeds, and ordinary curves before and after.
    assertThat(live.results().stream().map(FiringResult::sampledLight).flatMap(Optional::stream))
        .hasSize(SPEEDS.size() * FIRINGS)
        .filteredOn(SampledLight::isLong)
        .hasSize(2);
  }

  @Test
  void bladesThatDoNotReboundAreSaidToHaveBeenLookedAt() {
    Session live = measured(Bounce.NONE);

    assertThat(ReboundOfRun.of(live.results()).secondsAt())
        .containsOnlyKeys(S125, S250)
        .allSatisfy((speed, seconds) -> assertThat(seconds).isZero());
    assertThat(looks(live)).allMatch(seen -> seen.windowSeconds() >= 12e-3);
    assertThat(ReboundWords.ofRun(live.results()))
        .containsExactly(
            "Rebound by the light curve at 1/125: none within 10 ms after closing.",
            "Rebound by the light curve at 1/250: none within 10 ms after closing.");
  }

  private static List<ReboundSeen> looks(Session session) {
    return session.results().stream()
        .flatMap(firing -> firing.reboundSeen().stream())
        .filter(ReboundSeen::looked)
        .toList();
  }

  private Session measured(Bounce bounce) {
    Map<MarkedSpeed, SpeedBehaviour> speeds = new LinkedHashMap<>();
    SPEEDS.forEach(speed -> speeds.put(speed, SpeedBehaviour.of(0.05, 0.02)));
    LeafShutter shutter =
        new LeafShutter(
            "invented, springs back a little",
            new BladeStroke(BladeLaw.FIVE_BLADES_CONSTANT, 0.9, BladeLaw.FIVE_BLADES_CONSTANT, 0.9),
            speeds,
            bounce,
            ReleaseTiming.INVENTED,
            20);
    PracticeRig rig = PracticeRig.unpaced(shutter, SensorSet.INVENTED, 20);
    long[] nanos = {0};
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("a.session")),
            () -> nanos[0] += 1000,
            Marks.begins(
                "test", OffsetDateTime.parse("2026-11-25T10:00:00Z"), Optional.of("rebound")));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      session = workbench.fold().session();
      until(driver, rig, () -> workbench.fold().greeting().isPresent());
      LightSetting setting = driver.light().set();
      until(driver, rig, () -> setting.step() == LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      until(driver, rig, () -> setting.step() == LightSetting.Step.DONE);
      rig.holdOpen(false);
      until(driver, rig, session::isQuiet);
      driver.handle(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.AS_LEFT, "leaf", SPEEDS, Reference.EXACT, FIRINGS)));
      for (int i = 0; i < SPEEDS.size() * FIRINGS; i++) {
        rig.chooseSpeed(session.shown().orElseThrow());
        // Somebody turns the dial and cocks meanwhile.
        rig.rest(1);
        int before = session.results().size();
        assertThat(rig.fire()).isPresent();
        until(driver, rig, () -> session.results().size() > before && hasCurve(before));
      }
    }
    return session;
  }

  private boolean hasCurve(int firing) {
    return session.results().get(firing).curve().isPresent();
  }

  private static void until(BenchDriver driver, PracticeRig rig, BooleanSupplier condition) {
    for (int i = 0; i < MOST_STEPS && !condition.getAsBoolean(); i++) {
      if (driver.step().isEmpty()) {
        rig.rest(0.3);
      }
    }
    assertThat(condition.getAsBoolean()).isTrue();
  }
}
