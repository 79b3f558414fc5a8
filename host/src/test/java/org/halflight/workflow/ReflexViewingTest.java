package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.assertj.core.data.Offset;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A leaf shutter behind the flap of a body, on the practice rig. All figures are invented. */
class ReflexViewingTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed FASTEST = MarkedSpeed.parse("1/500");

  /** A plateau of 10 ms at 0.38 with edges of 1 ms; the two-level rule makes half of its width. */
  private static final Offset<Double> NEAR_THE_RULE = Offset.offset(0.5e-3);

  private PracticeBench bench;
  private RunActions run;

  @BeforeEach
  void begin(@TempDir Path folder) {
    bench = PracticeBench.unpaced(folder);
    BenchLight light = new BenchLight(bench.driver, bench.operator);
    run = new RunActions(bench.driver, bench.operator, light);
    bench.each(light::advance);
    light.set();
    bench.until("the light is set", () -> light.underWay().isEmpty());
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void lightPastTheFlapIsNoSecondOpeningButCounts() {
    List<FiringResult> tight = fired(ShutterKind.LEAF_REFLEX, InventedFlap.TIGHT, SIXTIETH);
    assertThat(tight).allSatisfy(f -> assertThat(f.outcome()).isEqualTo(Outcome.TIMED));
    assertThat(tight).allSatisfy(f -> assertThat(timed(f).flags()).doesNotContain(Flag.FLAP_LIGHT));

    List<FiringResult> leaking = fired(ShutterKind.LEAF_REFLEX, InventedFlap.LEAKING, SIXTIETH);
    for (FiringResult firing : leaking) {
      assertThat(firing.outcome()).isEqualTo(Outcome.TIMED);
      Exposure.Timed timed = timed(firing);
      assertThat(timed.flags()).contains(Flag.FLAP_LIGHT).doesNotContain(Flag.EARLY_LIGHT);
      assertThat(timed.mainSeconds())
          .isCloseTo(timed(tight.get(0)).mainSeconds(), Offset.offset(1e-3));
      assertThat(timed.earlySeconds()).isCloseTo(5.5e-3, NEAR_THE_RULE);
      assertThat(firing.effectiveSeconds().orElseThrow())
          .isCloseTo(timed.mainSeconds() + timed.earlySeconds(), Offset.offset(0.2e-3));
    }
    assertThat(Sentences.firing(leaking.get(0)))
        .contains(
            "Light before the exposure: the flap or mirror of the body let it through,"
                + " 5.45 ms (34 % of the main opening,");
    assertThat(Sentences.speed(SpeedSummary.of(leaking, Tolerance.THIRD)))
        .contains(
            "Light before the exposure in 3 of 3 firings:"
                + " the flap or mirror of the body let it through.");
  }

  @Test
  void theFlapLetsThroughMoreThanTheExposureAndIsStillNotTakenForIt() {
    List<FiringResult> leaking = fired(ShutterKind.LEAF_REFLEX, InventedFlap.LEAKING, FASTEST);
    for (FiringResult firing : leaking) {
      assertThat(firing.outcome()).isEqualTo(Outcome.TIMED);
      assertThat(timed(firing).earlyLightShare()).isGreaterThan(1);
      assertThat(timed(firing).mainSeconds()).isCloseTo(1.0 / 450, Offset.offset(0.3e-3));
    }
  }

  @Test
  void ofAnotherKindTheSameLightIsTwoOpenings() {
    assertThat(fired(ShutterKind.LEAF, InventedFlap.LEAKING, SIXTIETH))
        .allSatisfy(firing -> assertThat(firing.outcome()).isEqualTo(Outcome.DOUBLE));
  }

  private List<FiringResult> fired(ShutterKind kind, InventedFlap flap, MarkedSpeed speed) {
    bench.operator.useFlap(flap);
    run.begin(
        new RunSetup("", Phase.AS_LEFT, "leaf", List.of(speed), Reference.EXACT, 3)
            .withShutterKind(kind));
    int number = bench.session().run();
    for (int i = 1; i <= 3; i++) {
      int wanted = i;
      bench.operator.fire(bench.session().setting());
      bench.until("it is fired", () -> ofRun(number).size() >= wanted);
    }
    return ofRun(number);
  }

  private List<FiringResult> ofRun(int number) {
    return bench.session().results().stream()
        .filter(f -> f.run() == number && f.outcome().isOfTheShutter())
        .toList();
  }

  private static Exposure.Timed timed(FiringResult firing) {
    return (Exposure.Timed) firing.exposure();
  }
}
