package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.halflight.extratest.AdvanceTrial.Reason;
import org.halflight.fixtures.Seed;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.junit.jupiter.api.Test;

/** Intervals are held against those that were put in; the camera is invented. */
class AdvanceTimingTest {
  private static final double SLOW = InventedAdvance.SLOW;
  private static final double BLADES = InventedAdvance.BLADES;
  private static final double NEAR = 20e-6;

  @Test
  void theIntervalIsTheOneThatWasPutInOrIsNotTold(@Seed(20261125) long seed) {
    Random random = new Random(seed);
    double worst = 0;
    int told = 0;
    int trials = 0;
    for (boolean advanceFirst : new boolean[] {true, false}) {
      for (int i = 0; i < 150; i++) {
        double apart = 0.001 * Math.pow(50, random.nextDouble());
        double injected = BLADES + (advanceFirst ? apart : -apart);
        InventedAdvance camera = new InventedAdvance();
        camera.begin(Phase.ADJUSTING, 1, UntimedTest.RELEASE_ALONE, UntimedTest.WIND_AND_RELEASE);
        for (int alone = 0; alone < 3; alone++) {
          ring(camera, BLADES + scatter(random), random);
          camera.fire(SLOW);
        }
        ring(camera, BLADES + scatter(random), random);
        ring(camera, injected, random);
        camera.fire(SLOW);

        AdvanceTrial trial = camera.timing().newest();
        trials++;
        String which = "advance first " + advanceFirst + ", apart " + apart;
        if (trial.interval().isPresent()) {
          told++;
          double error = trial.interval().get().seconds() - injected;
          worst = Math.max(worst, Math.abs(error));
          assertThat(error).as(which).isCloseTo(0, within(NEAR));
        } else {
          // What rings after the blades cannot be told apart; before them it is the first edge.
          assertThat(trial.reason()).as(which).contains(Reason.TOO_CLOSE);
          assertThat(advanceFirst).as(which).isFalse();
          assertThat(apart).as(which).isLessThan(Clicks.RINGING_SECONDS + 2e-4);
        }
      }
    }
    System.out.printf(
        Locale.ROOT,
        "invented clicks: %d of %d intervals told, the worst %.2f us off%n",
        told,
        trials,
        1e6 * worst);
  }

  @Test
  void withoutKnowledgeOfTheBladesOverlappingClicksAreNotGuessed(@Seed(7) long seed) {
    Random random = new Random(seed);
    for (boolean advanceFirst : new boolean[] {true, false}) {
      for (int i = 0; i < 150; i++) {
        double apart = 0.001 * Math.pow(50, random.nextDouble());
        double injected = BLADES + (advanceFirst ? apart : -apart);
        InventedAdvance camera = new InventedAdvance();
        camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
        ring(camera, BLADES, random);
        ring(camera, injected, random);
        camera.fire(SLOW);

        AdvanceTrial trial = camera.timing().newest();
        String which = "advance first " + advanceFirst + ", apart " + apart;
        if (apart > Clicks.RINGING_SECONDS + 2e-4) {
          assertThat(trial.interval().orElseThrow().seconds())
              .as(which)
              .isCloseTo(injected, within(NEAR));
        } else if (apart < InventedAdvance.RINGING_SECONDS) {
          assertThat(trial.reason()).as(which).contains(Reason.TOO_CLOSE);
        } else {
          assertThat(
                  trial
                      .interval()
                      .map(AdvanceTrial.Interval::seconds)
                      .filter(seconds -> Math.abs(seconds - injected) > NEAR))
              .as(which)
              .isEmpty();
        }
      }
    }
  }

  @Test
  void aClickThatBeginsBehindTheKnownSoundOfTheBladesIsTold(@Seed(11) long seed) {
    Random random = new Random(seed);
    int trials = 0;
    int told = 0;
    for (int i = 0; i < 60; i++) {
      double ringing = 0.0008 + 0.0017 * random.nextDouble();
      double apart = 0.0002 + 0.005 * random.nextDouble();
      InventedAdvance camera = new InventedAdvance();
      camera.begin(Phase.ADJUSTING, 1, UntimedTest.RELEASE_ALONE, UntimedTest.WIND_AND_RELEASE);
      for (int alone = 0; alone < 3; alone++) {
        camera.click(BLADES + scatter(random), 5000, ringing);
        camera.fire(SLOW);
      }
      camera.click(BLADES, 5000, ringing);
      camera.click(BLADES - apart, 3000 + 4000 * random.nextDouble(), ringing);
      camera.fire(SLOW);

      AdvanceTrial trial = camera.timing().newest();
      String which = "ringing " + ringing + ", apart " + apart;
      trials++;
      told += trial.interval().isPresent() ? 1 : 0;
      if (apart > ringing + 0.0008) {
        assertThat(trial.interval()).as(which).isPresent();
      }
      trial
          .interval()
          .ifPresent(
              interval ->
                  assertThat(interval.seconds()).as(which).isCloseTo(BLADES - apart, within(NEAR)));
    }
    assertThat(told).isBetween(trials / 4, trials - 1);
  }

  @Test
  void aSensorThatHoldsItsOutputMakesOneClickOfOnePulse() {
    for (double held : new double[] {0.002, 0.005, 0.009}) {
      for (double injected : new double[] {0.02, 0.004, -0.012}) {
        InventedAdvance camera = new InventedAdvance();
        camera.begin(Phase.ADJUSTING, 1, UntimedTest.RELEASE_ALONE, UntimedTest.WIND_AND_RELEASE);
        for (int alone = 0; alone < 3; alone++) {
          camera.held(BLADES, held);
          camera.fire(SLOW);
        }
        camera.held(BLADES, held);
        camera.held(injected, held);
        camera.fire(SLOW);

        AdvanceTrial trial = camera.timing().newest();
        String which = "held " + held + ", injected " + injected;
        assertThat(trial.interval().orElseThrow().seconds())
            .as(which)
            .isCloseTo(injected, within(NEAR));
        assertThat(trial.heard()).as(which).hasSizeLessThanOrEqualTo(2);
      }
    }
  }

  @Test
  void aContactTellsTheIntervalInPlaceOfTheClickSensor() {
    for (double injected : new double[] {0.03, 0.002, 0.0005, -0.0005, -0.004, -0.04}) {
      InventedAdvance camera = new InventedAdvance();
      camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
      camera.contact(injected, 0.4);
      camera.fire(SLOW);

      AdvanceTrial.Interval told = camera.timing().newest().interval().orElseThrow();
      assertThat(told.seconds()).isCloseTo(injected, within(NEAR));
      assertThat(told.byContact()).isTrue();
      assertThat(told.plusMinusSeconds()).isEqualTo(AdvanceTrial.CONTACT_SECONDS);
    }
  }

  @Test
  void whatTheSensorsCannotTellIsAReason() {
    assertThat(reason(camera -> {})).isEqualTo(Reason.NO_CLICK);
    assertThat(reason(camera -> camera.click(0.02, 1500, 0.2))).isEqualTo(Reason.NOISE);
    assertThat(
            reason(
                camera -> {
                  for (int i = 0; i < 10; i++) {
                    camera.click(0.05 - 0.01 * i, 4000, 0.0005);
                  }
                }))
        .isEqualTo(Reason.NOISE);
    assertThat(
            reason(
                camera -> {
                  camera.click(0.03);
                  camera.click(0.02);
                  camera.click(BLADES);
                }))
        .isEqualTo(Reason.WHICH_CLICK);
    // A contact that closes as the blades open, and opens as they close, is the flash contact.
    assertThat(reason(camera -> camera.contact(0, SLOW))).isEqualTo(Reason.FLASH_CONTACT);
  }

  @Test
  void aClickAsTheBladesCloseMayBeTheirs() {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
    camera.click(-0.0305);
    camera.fire(0.03);

    assertThat(camera.timing().newest().reason()).contains(Reason.CLOSING_CLICK);
  }

  @Test
  void aReleaseWithoutLightHasNoInterval() {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 2, UntimedTest.WIND_AND_RELEASE);
    camera.press(0);
    camera.click(-0.01);
    camera.noLight(0.1);

    assertThat(camera.timing().newest().reason()).contains(Reason.NO_LIGHT);
    assertThat(camera.timing().meanSeconds()).isEmpty();
  }

  @Test
  void theReleaseNeedNotBeWired() {
    assertThat(tried(Phase.ADJUSTING, 0.01).releaseIsWired()).isFalse();
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
    camera.press(0.05);
    camera.click(0.01);
    camera.fire(SLOW);

    AdvanceTiming timing = camera.timing();
    assertThat(timing.releaseIsWired()).isTrue();
    assertThat(timing.newest().interval().orElseThrow().seconds()).isCloseTo(0.01, within(NEAR));
  }

  @Test
  void noIntervalIsGoodOrBad() {
    for (double seconds : new double[] {0.03, 0.0015, -0.008}) {
      assertThat(tried(Phase.AS_LEFT, seconds, seconds).state()).isEqualTo(CheckState.NOT_TESTED);
      assertThat(tried(Phase.AS_LEFT, seconds).item()).isEqualTo(CheckItem.WIND);
    }
  }

  @Test
  void whileAdjustingTheNewestTrialCounts() {
    assertThat(tried(Phase.ADJUSTING, 0.02, 0.01, 0.0015).meanSeconds().orElseThrow())
        .isCloseTo(0.0015, within(NEAR));
  }

  @Test
  void theMeanIsAsUnsureAsSensorAndScatterMakeIt() {
    AdvanceTiming timing = tried(Phase.AS_LEFT, 0.009, 0.010, 0.011);

    assertThat(timing.meanSeconds().orElseThrow()).isCloseTo(0.010, within(1e-6));
    assertThat(timing.scatterSeconds().orElseThrow()).isCloseTo(0.001, within(1e-6));
    // Student's t for 2 degrees of freedom and 95 %: 4.303 (JCGM 100:2008, table G.2).
    double ofTheMean = 4.303 * 0.001 / Math.sqrt(3);
    assertThat(timing.plusMinusSeconds().orElseThrow())
        .isCloseTo(Math.hypot(0.0003, ofTheMean), within(2e-6));
    assertThat(timing.values().get(0).value()).isCloseTo(10, within(1e-3));
    assertThat(timing.values().get(0).n()).isEqualTo(3);
  }

  @Test
  void aRunThatDidNotAskHasNoTiming() {
    InventedLight bench = new InventedLight();
    bench.begin(
        Phase.AS_LEFT,
        org.halflight.session.CameraCustoms.NONE,
        org.halflight.speeds.MarkedSpeed.parse("1/60"));
    bench.open(0.016, 0.001);
    bench.quiet();

    assertThat(bench.tried()).noneMatch(AdvanceTiming.class::isInstance);
  }

  private static AdvanceTiming tried(Phase phase, double... intervals) {
    return InventedAdvance.trials(phase, intervals).timing();
  }

  private static Reason reason(java.util.function.Consumer<InventedAdvance> sounds) {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
    sounds.accept(camera);
    camera.fire(SLOW);
    List<Reason> reasons = new ArrayList<>();
    camera.timing().newest().reason().ifPresent(reasons::add);
    assertThat(reasons).hasSize(1);
    return reasons.get(0);
  }

  private static void ring(InventedAdvance camera, double beforeSeconds, Random random) {
    camera.click(beforeSeconds, 2000 + 6000 * random.nextDouble(), InventedAdvance.RINGING_SECONDS);
  }

  private static double scatter(Random random) {
    return 50e-6 * random.nextGaussian();
  }
}
