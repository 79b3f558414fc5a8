package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.LightSentences;
import org.halflight.bench.LightSetting;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.TripPoints;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * Comparators that switch beside their thresholds, found by the real firmware in the simulator
 * while the light is set. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class ComparatorsOnTheBoardTest {
  private static final double MILLIVOLTS_PER_COUNT = 5000.0 / 1024;

  @TempDir private Path folder;

  @Test
  void theSweepOfTheFirmwareFindsOffsetAndHysteresis() throws Exception {
    List<String> scenario =
        List.of(
            "light all 40 4000",
            "offset low 9",
            "offset high -14",
            "hysteresis 12",
            BenchInABox.NAMED);
    Path file = folder.resolve("comparators.session");
    TripPoints live;
    try (BenchInABox box = BenchInABox.start(folder, scenario);
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      bench.connect();
      LightSetting setting = bench.tryLight();
      assertThat(setting.step()).isEqualTo(LightSetting.Step.DONE);
      live = setting.trips().orElseThrow();
      System.out.printf("simulated: comparators found at %s counts%n", live);
      // Steps of 1.2 mV, and readings of 4.9 mV a count whose errors their mean halves.
      assertThat(live.low().offsetCounts() * MILLIVOLTS_PER_COUNT).isCloseTo(9, within(2.5));
      assertThat(live.high().offsetCounts() * MILLIVOLTS_PER_COUNT).isCloseTo(-14, within(2.5));
      assertThat(live.low().hysteresisCounts() * MILLIVOLTS_PER_COUNT).isCloseTo(12, within(4.0));
      LevelPair middle = live.middle(setting.levels().orElseThrow()).orElseThrow();
      // Half a code of the eight-bit PWM is 0.0025 of this light.
      assertThat(middle.low()).isCloseTo(LevelPair.GAUSS.low(), within(0.0035));
      assertThat(middle.high()).isCloseTo(LevelPair.GAUSS.high(), within(0.0035));
      assertThat(LightSentences.done(setting))
          .contains("The low level switches")
          .contains("above its threshold: corrected");
    }
    TripPoints again = SessionReducer.replay(SessionFile.read(file).events()).session().trips();
    assertThat(again.low().offsetCounts()).isCloseTo(live.low().offsetCounts(), within(5.1e-5));
    assertThat(again.high().hysteresisCounts())
        .isCloseTo(live.high().hysteresisCounts(), within(5.1e-5));
  }
}
