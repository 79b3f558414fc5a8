package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.fixtures.Seeds;
import org.halflight.link.Link;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.Crc16;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LevelComparator;
import org.halflight.shuttermodel.LevelComparators;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Lamps, dark levels and openings that a bench meets; the rig is the practice rig, so all figures
 * are simulated.
 */
class LightSettingTest {
  private static final long SEED = Seeds.usually(11);

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
    String sentence = LightSentences.refused(setting.refusal().orElseThrow());
    assertThat(sentence).contains(words).doesNotContain("{").doesNotContain("\n");
  }

  @Test
  void noticesAShutterThatWasNotOpened() {
    LightSetting setting = set(front(40, 4000, Lamp.STEADY), false);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.REFUSED);
    assertThat(LightSentences.refused(setting.refusal().orElseThrow()))
        .contains("Is the shutter really open");
  }

  /** The invented comparators of the default practice rig: 8 mV late below, 5 mV early above. */
  @Test
  void findsWhereTheComparatorsReallySwitchAndMakesUpForIt() {
    LightSetting setting = set(SensorSet.INVENTED, true);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.DONE);
    TripPoints trips = setting.trips().orElseThrow();
    // Steps of 1.2 mV, a threshold that lags by one of them, and 4 mV of ripple.
    assertThat(millivolts(trips.low().offsetCounts())).isCloseTo(8, within(2.5));
    assertThat(millivolts(trips.high().offsetCounts())).isCloseTo(-5, within(2.5));
    assertThat(millivolts(trips.low().hysteresisCounts())).isCloseTo(12, within(6.0));
    LevelPair middle = trips.middle(setting.levels().orElseThrow()).orElseThrow();
    assertThat(middle.low()).isCloseTo(LevelPair.GAUSS.low(), within(0.0035));
    assertThat(middle.high()).isCloseTo(LevelPair.GAUSS.high(), within(0.0035));
    assertThat(LightSentences.done(setting.levels().orElseThrow(), true))
        .contains("The one level of this rig is at")
        .doesNotContain("thresholds");
    assertThat(LightSentences.done(setting))
        .containsPattern("The low level switches \\d+ mV above its threshold: corrected\\.")
        .containsPattern("The high level switches \\d+ mV below its threshold: corrected\\.");
  }

  /** Twice the stated uncertainty, which the ripple of the invented lamp rules. */
  private static double expandedMillivolts(ComparatorTrips trips) {
    assertThat(trips.standardUncertaintyCounts()).isLessThan(0.6);
    return millivolts(2 * trips.standardUncertaintyCounts());
  }

  /** Whatever comparators are drawn, under a lamp with ripple the sweep finds their offsets. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void findsDrawnComparators(long seed) {
    LevelComparators drawn = LevelComparators.drawn(seed);
    SensorSet sensors = SensorSet.INVENTED.with(drawn);
    Path file = folder.resolve("drawn.session");
    PracticeRig rig = rig(sensors);
    try (BenchDriver driver = driver(rig, file)) {
      LightSetting setting = driver.light().set();
      walk(driver, rig, setting, LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      walk(driver, rig, setting, LightSetting.Step.DONE);
      TripPoints trips = setting.trips().orElseThrow();
      assertThat(millivolts(trips.low().offsetCounts()))
          .as("seed %d", seed)
          .isCloseTo(drawn.low().offsetMillivolts(), within(expandedMillivolts(trips.low())));
      assertThat(millivolts(trips.high().offsetCounts()))
          .as("seed %d", seed)
          .isCloseTo(drawn.high().offsetMillivolts(), within(expandedMillivolts(trips.high())));
    }
  }

  /** What a replay of the file makes of the light is what was found live. */
  @Test
  void theSessionFileKeepsWhatWasFound() {
    LightSetting setting = set(SensorSet.INVENTED, true);
    SessionReducer again =
        SessionReducer.replay(SessionFile.read(folder.resolve("light.session")).events());
    ComparatorTrips low = setting.trips().orElseThrow().low();
    // Marks have four digits behind the point, live and in a replay.
    assertThat(again.session().trips().low().offsetCounts())
        .isCloseTo(low.offsetCounts(), within(5.1e-5));
    assertThat(again.session().trips().low().hysteresisCounts())
        .isCloseTo(low.hysteresisCounts(), within(5.1e-5));
    assertThat(again.session().light()).isPresent();
    // Each outer sensor has light of its own, and files keep it.
    assertThat(setting.outer()).containsOnlyKeys(Channel.OUTER_A, Channel.OUTER_B);
    SensorLight a = setting.outer().get(Channel.OUTER_A);
    assertThat(a.fullCounts() - a.darkCounts()).isGreaterThan(LightLevels.LEAST_LIGHT_COUNTS);
    SensorLight kept = again.session().outerLight().get(Channel.OUTER_A);
    assertThat(kept.fullCounts()).isCloseTo(a.fullCounts(), within(5.1e-5));
    assertThat(kept.darkCounts()).isCloseTo(a.darkCounts(), within(5.1e-5));
  }

  static Stream<Arguments> badComparators() {
    return Stream.of(
        Arguments.of(new LevelComparator(150, 0, 0, 0), "switches 1\\d\\d mV from its"),
        Arguments.of(new LevelComparator(0, 160, 0, 0), "takes 1\\d\\d mV more to switch on"),
        Arguments.of(new LevelComparator(600, 0, 0, 0), "low level did not switch"));
  }

  @ParameterizedTest
  @MethodSource("badComparators")
  void saysWhatIsWrongWithAComparator(LevelComparator low, String words) {
    LevelComparator ideal = LevelComparator.IDEAL;
    FrontEnd front = front(40, 4000, Lamp.STEADY);
    LightSetting setting =
        set(
            new SensorSet(front, front, front, new LevelComparators(low, ideal, ideal, ideal)),
            true);
    assertThat(setting.step()).isEqualTo(LightSetting.Step.REFUSED);
    assertThat(LightSentences.refused(setting.refusal().orElseThrow())).containsPattern(words);
  }

  @Test
  void noticesAShutterThatWasLetGoTooEarly() {
    PracticeRig rig = rig(SensorSet.INVENTED);
    try (BenchDriver driver = driver(rig)) {
      LightSetting setting = driver.light().set();
      walk(driver, rig, setting, LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      walk(driver, rig, setting, LightSetting.Step.TRIPS);
      rig.holdOpen(false);
      walk(driver, rig, setting, LightSetting.Step.REFUSED);
      assertThat(LightSentences.refused(setting.refusal().orElseThrow()))
          .contains("Keep the shutter open until the light is set");
    }
  }

  @Test
  void goesOnWithARigThatKnowsNoSweepAndSaysSoOnce() {
    PracticeRig rig = rig(SensorSet.INVENTED);
    try (BenchDriver driver = driver(new OldFirmware(rig))) {
      for (int time = 0; time < 2; time++) {
        LightSetting setting = driver.light().set();
        walk(driver, rig, setting, LightSetting.Step.OPEN_THE_SHUTTER);
        rig.holdOpen(true);
        driver.light().shutterIsOpen();
        walk(driver, rig, setting, LightSetting.Step.DONE);
        rig.holdOpen(false);
        assertThat(setting.trips()).isEmpty();
        String said = LightSentences.done(setting);
        if (time == 0) {
          assertThat(said).contains("cannot check where its levels really switch");
        } else {
          assertThat(said).doesNotContain("trip");
        }
      }
    }
  }

  private static double millivolts(double counts) {
    return counts * 5000 / 1024;
  }

  /** A rig of before the sweep: to it the command is one that nobody knows. */
  private record OldFirmware(Link rig) implements Link {
    @Override
    public String name() {
      return rig.name();
    }

    @Override
    public int read(byte[] buffer) {
      return rig.read(buffer);
    }

    @Override
    public void write(byte[] bytes) {
      String line = new String(bytes, StandardCharsets.US_ASCII);
      if (line.startsWith("w ")) {
        String body = "y " + line.substring(2, line.indexOf('#'));
        line = body + "#" + String.format("%04X", Crc16.of(body)) + "\n";
      }
      rig.write(line.getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public void close() {
      rig.close();
    }
  }

  private static FrontEnd front(double dark, double full, Lamp lamp) {
    return new FrontEnd(dark, full, 0, 1, lamp);
  }

  private LightSetting set(FrontEnd front, boolean open) {
    return set(new SensorSet(front, front, front), open);
  }

  private LightSetting set(SensorSet sensors, boolean open) {
    PracticeRig rig = rig(sensors);
    try (BenchDriver driver = driver(rig)) {
      LightSetting setting = driver.light().set();
      walk(driver, rig, setting, LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(open);
      if (setting.step() == LightSetting.Step.OPEN_THE_SHUTTER) {
        driver.light().shutterIsOpen();
      }
      walk(driver, rig, setting, LightSetting.Step.DONE);
      return setting;
    }
  }

  private static PracticeRig rig(SensorSet sensors) {
    return PracticeRig.unpaced(
        InventedShutters.soundLeaf(InventedShutters.dial(), SEED), sensors, SEED);
  }

  private BenchDriver driver(Link link) {
    return driver(link, folder.resolve("light.session"));
  }

  private static BenchDriver driver(Link link, Path file) {
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file), () -> 0, new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    return new BenchDriver(workbench, new PumpFeed(link, () -> 0));
  }

  /** Lets the setting go on up to a step, or to its end before. */
  private static void walk(
      BenchDriver driver, PracticeRig rig, LightSetting setting, LightSetting.Step to) {
    while (setting.step() != to
        && setting.step() != LightSetting.Step.DONE
        && setting.step() != LightSetting.Step.REFUSED) {
      if (driver.step().isEmpty()) {
        rig.rest(0.3);
      }
    }
  }
}
