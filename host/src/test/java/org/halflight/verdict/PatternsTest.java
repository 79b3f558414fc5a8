package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.fixtures.Seed;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.validation.ModelRuns;
import org.halflight.verdict.Pattern.Kind;
import org.halflight.words.PatternWords;
import org.junit.jupiter.api.Test;

class PatternsTest {
  private static final List<MarkedSpeed> DIAL = Dial.find("leaf").orElseThrow().speeds();

  private static Pattern of(LeafShutter shutter) {
    return Patterns.of(new ModelRuns(shutter).next(Phase.AS_FOUND, 5));
  }

  private static String words(Pattern pattern) {
    return String.join("\n", PatternWords.of(pattern, DIAL));
  }

  @Test
  void dirtInTheSlowSpeedTrainHasItsSignature(@Seed(1) long first) {
    for (long seed = first; seed < first + 30; seed++) {
      Pattern pattern = of(InventedShutters.dirtySlowTrain(DIAL, seed));
      assertThat(pattern.kind()).as("seed %d", seed).isEqualTo(Kind.SLOW_SPEED_TRAIN);
      assertThat(pattern.signs())
          .as("seed %d", seed)
          .hasAtLeastOneElementOfType(Pattern.Scatters.class);
    }
    // That dry bearings or dirt in the escapement spoil the slow speeds: Clerc, Photography,
    // Theory and Practice; US Army SS0522.
    assertThat(words(of(InventedShutters.dirtySlowTrain(DIAL, 20))))
        .contains("1 s to 1/15 run ")
        .contains(" stop slow, while the fast speeds are sound: this points to the slow-speed")
        .contains("Firings there are uneven: scatter ")
        .contains("The first firing after rest, at 1 s, was another ")
        .contains("Look first at the slow-speed train");
  }

  @Test
  void aHangingTrainIsNamedEvenWithoutAnyTime() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .hanging("1", 5)
                .hanging("1/2", 5)
                .at("1/60", 0.01, 0.02, 0.03)
                .at("1/125", 0.01, 0.02, 0.03)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.SLOW_SPEED_TRAIN);
    assertThat(pattern.signs()).contains(new Pattern.Hangs(10, 10));
    assertThat(words(pattern))
        .contains("1 s and 1/2 hang, while the fast speeds are sound")
        .contains("stayed open 10 times in 10 releases");
  }

  @Test
  void soundAndCleanedShuttersShowNothing(@Seed(1) long first) {
    for (long seed = first; seed < first + 30; seed++) {
      assertThat(of(InventedShutters.soundLeaf(DIAL, seed)).kind())
          .as("seed %d", seed)
          .isEqualTo(Kind.NOTHING_STANDS_OUT);
      assertThat(of(InventedShutters.cleanedSlowTrain(DIAL, seed)).kind())
          .as("seed %d", seed)
          .isEqualTo(Kind.NOTHING_STANDS_OUT);
    }
  }

  @Test
  void slowThroughoutIsNotTakenForTheTrain() {
    Pattern pattern = of(InventedShutters.allSlow(DIAL, 5));
    assertThat(pattern.kind()).isEqualTo(Kind.ALL_SLOW);
    assertThat(words(pattern)).contains("Every speed runs slow").contains("oil and dirt");
  }

  @Test
  void onlyTheTopSpeed() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .at("1/30", 0.01, 0.02, 0.03)
                .at("1/60", 0.01, 0.02, 0.03)
                .at("1/125", 0.01, 0.02, 0.03)
                .at("1/500", 0.71, 0.72, 0.73)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.TOP_SLOW);
    assertThat(words(pattern))
        .contains("Only the top speed 1/500 runs slow, by 0.72 stop; the others are sound.")
        .contains("Common practice, no source.");
  }

  @Test
  void oneAlone() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .at("1/30", 0.01, 0.02, 0.03)
                .at("1/60", -0.81, -0.82, -0.83)
                .at("1/125", 0.01, 0.02, 0.03)
                .at("1/250", 0.01, 0.02, 0.03)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.ONE_ALONE);
    assertThat(words(pattern)).contains("1/60 alone is off (0.82 stop fast)");
  }

  @Test
  void tooLittleIsSaid() {
    Pattern pattern = Patterns.of(Fired.asFound().at("1/30", 0.01, 0.02, 0.03).run());
    assertThat(pattern.kind()).isEqualTo(Kind.TOO_LITTLE);
  }
}
