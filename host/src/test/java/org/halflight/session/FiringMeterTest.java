package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.signal.Firing;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiringMeterTest {
  private static final Firing FIRING = PartsOfASession.firing(1, 10e-3);
  private static final Exposure OF_A_CURTAIN = new Exposure.StuckOpen(1, 2);

  private final PartsOfASession parts = new PartsOfASession();

  private static RunSetup run(String dial, ShutterKind kind) {
    return new RunSetup("", Phase.AS_LEFT, dial, List.of(InventedBench.S60), Reference.EXACT, 2)
        .withShutterKind(kind);
  }

  @ParameterizedTest
  @CsvSource({
    "leaf, UNKNOWN, false",
    "curtain, UNKNOWN, true",
    "leaf, CURTAIN_LONG_SIDE, true",
    "curtain, LEAF, false"
  })
  void theMethodGoesByTheShutterOfTheRun(String dial, ShutterKind kind, boolean curtain) {
    ExposureMethod ofCurtains = (crossings, levels, rate, nowTicks) -> OF_A_CURTAIN;
    FiringMeter meter =
        new FiringMeter(
            parts.log,
            parts.progress,
            parts.rig,
            parts.light,
            run -> run.shutter().isCurtain() ? ofCurtains : ExposureMethod.LEAF);
    assertThat(meter.exposure(FIRING)).isInstanceOf(Exposure.Timed.class);
    parts.progress.begin(run(dial, kind), parts.events);
    assertThat(meter.exposure(FIRING).equals(OF_A_CURTAIN)).isEqualTo(curtain);
  }

  @Test
  void aCurtainIsTimedAtTheCentreAsBladesAre() {
    parts.progress.begin(run("leaf", ShutterKind.UNKNOWN), parts.events);
    Exposure blades = parts.meter.exposure(FIRING);
    parts.progress.begin(run("curtain", ShutterKind.UNKNOWN), parts.events);
    assertThat(parts.meter.exposure(FIRING)).isEqualTo(blades);
  }

  @Test
  void levelsAreKnownOnceTheLightIsSet() {
    FiringResult unset = parts.fire(1, 10e-3);
    parts.light.onSet(new SessionInput.LightSet(PartsOfASession.LIGHT), parts.events);
    FiringResult set = parts.fire(2, 10e-3);
    assertThat(unset.levels()).isEmpty();
    assertThat(set.levels().map(LevelPair::low).orElseThrow())
        .isCloseTo(LevelPair.GAUSS.low(), within(1e-9));
    assertThat(set.effectiveSeconds().getAsDouble()).isCloseTo(10e-3, within(1e-6));
  }
}
