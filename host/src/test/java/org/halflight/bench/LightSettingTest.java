package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.SensorSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Lamps, dark levels and openings that a bench meets; the rig is the practice rig, so all figures
 * are simulated.
 */
class LightSettingTest {
  private static final long SEED = 11;

  @TempDir private Path folder;

  @Test
  void putsTheThresholdsOnTheGaussLevelsOfTheLight() {
    LightSetting setting = set(new FrontEnd(40, 4000, 0, 1, Lamp.STEADY), true);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.DONE);
    LevelPair levels = ((LightLevels.Known) setting.levels().orElseThrow().levels()).levels();
    // One code of the eight-bit PWM is 19.5 mV of 3960 mV of light: half of it is 0.0025.
    assertThat(levels.low()).isCloseTo(LevelPair.GAUSS.low(), within(0.0035));
    assertThat(levels.high()).isCloseTo(LevelPair.GAUSS.high(), within(0.0035));
  }

  static Stream<Arguments> badLights() {
    return Stream.of(
        Arguments.of(front(40, 900, Lamp.STEADY), "too little light"),
        Arguments.of(front(40, 5000, Lamp.STEADY), "too bright"),
        Arguments.of(front(1500, 4000, Lamp.STEADY), "still sees much light"),
        Arguments.of(front(40, 4000, new Lamp(0, 600, 100, 0.05)), "flickers at 100 Hz"),
        Arguments.of(front(40, 4000, new Lamp(0, 600, 120, 0.05)), "flickers at 120 Hz"),
        Arguments.of(front(40, 3000, new Lamp(0, 600, 3100, 0.3)), "within a millisecond"),
        Arguments.of(front(40, 4000, new Lamp(0, 600, 3100, 0.3)), "the end of its scale"),
        Arguments.of(front(40, 4000, new Lamp(-0.5, 5, 100, 0)), "not steady"));
  }

  @ParameterizedTest
  @MethodSource("badLights")
  void saysWhatIsWrongWithTheLight(FrontEnd front, String words) {
    LightSetting setting = set(front, true);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.REFUSED);
    String sentence = LightText.refused(setting.refusal().orElseThrow());
    assertThat(sentence).contains(words).doesNotContain("{").doesNotContain("\n");
  }

  @Test
  void noticesAShutterThatWasNotOpened() {
    LightSetting setting = set(front(40, 4000, Lamp.STEADY), false);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.REFUSED);
    assertThat(LightText.refused(setting.refusal().orElseThrow()))
        .contains("Is the shutter really open");
  }

  private static FrontEnd front(double dark, double full, Lamp lamp) {
    return new FrontEnd(dark, full, 0, 1, lamp);
  }

  private LightSetting set(FrontEnd front, boolean open) {
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), SEED),
            new SensorSet(front, front, front),
            SEED);
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("light.session")),
            () -> 0,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, () -> 0))) {
      LightSetting setting = driver.setLight();
      while (setting.step() == LightSetting.Step.DARK) {
        step(driver, rig);
      }
      rig.holdOpen(open);
      if (setting.step() == LightSetting.Step.OPEN_THE_SHUTTER) {
        driver.shutterIsOpen();
      }
      while (setting.step() != LightSetting.Step.DONE
          && setting.step() != LightSetting.Step.REFUSED) {
        step(driver, rig);
      }
      return setting;
    }
  }

  private static void step(BenchDriver driver, PracticeRig rig) {
    if (driver.step().isEmpty()) {
      rig.rest(0.3);
    }
  }
}
