package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.fixtures.Seed;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
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

  /** Speeds that are right, with an even scatter. */
  private static Fired right(String... speeds) {
    Fired run = Fired.asFound();
    for (String speed : speeds) {
      run.at(speed, 0.01, 0.03, -0.01, 0.02, 0.0);
    }
    return run;
  }

  @Test
  void dirtInTheSlowSpeedTrainShowsAtTheSlowSpeedsAlone(@Seed(1) long first) {
    for (long seed = first; seed < first + 30; seed++) {
      Pattern pattern = of(InventedShutters.dirtySlowTrain(DIAL, seed));
      assertThat(pattern.kind()).as("seed %d", seed).isEqualTo(Kind.SLOW_SPEEDS);
    }
    assertThat(words(of(InventedShutters.dirtySlowTrain(DIAL, 1))))
        .contains("1 s to 1/15 run ")
        .contains(" stop slow; the means of the others are ")
        .contains(" are uneven: scatter ")
        .contains("The first firing after rest, at 1 s, was ")
        .doesNotContain("train");
  }

  @Test
  void hangsAreSaidEvenWithoutAnyTime() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .hanging("1", 5)
                .hanging("1/2", 5)
                .at("1/60", 0.01, 0.02, 0.03)
                .at("1/125", 0.01, 0.02, 0.03)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.NO_MEAN_OFF);
    assertThat(pattern.signs())
        .containsExactly(
            new Pattern.WithoutTime(
                Outcome.STUCK_OPEN,
                List.of(MarkedSpeed.parse("1"), MarkedSpeed.parse("1/2")),
                10,
                10));
    assertThat(words(pattern)).startsWith("10 of 10 releases at 1 s and 1/2: stuck open.");
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
  void everySpeedSlowByTheSameIsNoMatterOfTheSlowOnes() {
    // Fast speeds by 0.15 to 0.2 stop slow are not the right ones beside slow speeds by 0.2.
    Fired run = Fired.asFound();
    for (String speed : List.of("1", "1/2", "1/4", "1/8", "1/15")) {
      run.at(speed, 0.19, 0.21, 0.2, 0.23, 0.17);
    }
    for (String speed : List.of("1/30", "1/60", "1/125", "1/250", "1/500")) {
      run.at(speed, 0.14, 0.16, 0.15, 0.18, 0.12);
    }
    Pattern pattern = Patterns.of(run.run());
    assertThat(pattern.kind()).isEqualTo(Kind.ALL_SLOW);
    assertThat(words(pattern)).isEqualTo("Every speed runs slow, by 0.15 to 0.20 stop.");

    assertThat(of(InventedShutters.allSlow(DIAL, 5)).kind()).isEqualTo(Kind.ALL_SLOW);
  }

  @Test
  void aDragThatFadesTowardsTheTopIsSaidAsMeasured() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .at("1", 0.28, 0.3, 0.32)
                .at("1/4", 0.23, 0.25, 0.27)
                .at("1/15", 0.19, 0.2, 0.21)
                .at("1/60", 0.13, 0.14, 0.15)
                .at("1/500", 0.01, 0.02, 0.03)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.SLOW_SPEEDS);
    assertThat(words(pattern))
        .contains("stop slow; the means of the others are 0.02 to 0.14 stop slow.")
        .doesNotContain("sound")
        .doesNotContain("train");
  }

  @Test
  void fastSpeedsThatNeverOpenFullyStandOut() {
    Pattern pattern =
        Patterns.of(
            right("1", "1/8", "1/60", "1/125")
                .at(
                    "1/500",
                    Reference.EXACT,
                    Map.of(Outcome.NEVER_FULLY_OPEN, 5),
                    OptionalDouble.empty())
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.NO_MEAN_OFF);
    assertThat(words(pattern))
        .contains("5 of 5 releases at 1/500: never fully open.")
        .contains("No mean error is beyond its limits.");
  }

  @Test
  void doublesStandOut() {
    Pattern pattern =
        Patterns.of(
            right("1", "1/8", "1/60", "1/125")
                .at(
                    "1/500",
                    Reference.EXACT,
                    Map.of(Outcome.DOUBLE, 2),
                    OptionalDouble.empty(),
                    0.01,
                    0.02,
                    0.03)
                .run());
    assertThat(words(pattern)).contains("2 of 5 releases at 1/500: double.");
    assertThat(pattern.kind()).isEqualTo(Kind.NO_MEAN_OFF);
  }

  @Test
  void scatterStandsOut() {
    Pattern pattern =
        Patterns.of(
            right("1/60", "1/125", "1/250")
                .at("1/4", 0.4, -0.35, 0.1, -0.3, 0.2)
                .at("1/8", 0.3, -0.4, 0.35, -0.2, 0.0)
                .run());
    assertThat(words(pattern)).contains("Firings at 1/4 and 1/8 are uneven: scatter 0.3");
    assertThat(pattern.kind()).isEqualTo(Kind.NO_MEAN_OFF);
  }

  @Test
  void aFirstFiringAfterRestThatIsUnlikeTheOthersStandsOut() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .at("1", Reference.EXACT, Map.of(), OptionalDouble.of(1.51), 0.0, 0.02, 0.01)
                .at("1/8", 0.01, 0.02, 0.03)
                .at("1/60", 0.01, 0.02, 0.03)
                .run());
    assertThat(words(pattern))
        .contains("The first firing after rest, at 1 s, was 1.50 stop slower than the others.");
    assertThat(pattern.kind()).isEqualTo(Kind.NO_MEAN_OFF);
  }

  @Test
  void aRunInIsSaidAsARunDownIs() {
    for (int way : new int[] {1, -1}) {
      Fired run = Fired.asFound();
      for (String speed : List.of("1", "1/4", "1/15")) {
        run.at(speed, way * -0.05, way * -0.03, 0.0, way * 0.03, way * 0.05);
      }
      Pattern pattern = Patterns.of(run.at("1/60", 0.01, 0.02, 0.0, 0.01, 0.02).run());
      assertThat(words(pattern))
          .contains("each firing is about 0.03 stop " + (way > 0 ? "slower" : "faster"));
      Pattern.Creeps creeps =
          (Pattern.Creeps)
              pattern.signs().stream()
                  .filter(Pattern.Creeps.class::isInstance)
                  .findFirst()
                  .orElseThrow();
      assertThat(creeps.stopsAFiring()).isCloseTo(way * 0.03, within(0.005));
    }
    Fired little = Fired.asFound();
    for (String speed : List.of("1", "1/4", "1/15")) {
      little.at(speed, -0.02, -0.01, 0.0, 0.01, 0.02);
    }
    assertThat(Patterns.of(little.run()).kind()).isEqualTo(Kind.NOTHING_STANDS_OUT);
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
        .isEqualTo(
            "Only the top speed 1/500 runs slow, by 0.72 stop; the means of the others are 0.02"
                + " stop slow.");
  }

  @Test
  void oneAlone() {
    Pattern pattern =
        Patterns.of(
            Fired.asFound()
                .at("1/30", 0.01, 0.02, 0.03)
                .at("1/60", -0.81, -0.82, -0.83)
                .at("1/125", 0.01, 0.02, 0.03)
                .at("1/250", -0.01, -0.02, -0.03)
                .run());
    assertThat(pattern.kind()).isEqualTo(Kind.ONE_ALONE);
    assertThat(words(pattern))
        .isEqualTo(
            "1/60 alone is off (0.82 stop fast); the means of the others are 0.02 stop fast to"
                + " 0.02 stop slow.");
  }

  @Test
  void tooLittleIsSaidAndWhatStandsOutAllTheSame() {
    Pattern pattern = Patterns.of(Fired.asFound().hanging("1/30", 2, 0.01, 0.02, 0.03).run());
    assertThat(pattern.kind()).isEqualTo(Kind.TOO_LITTLE);
    assertThat(words(pattern)).contains("2 of 5 releases at 1/30: stuck open.");
  }
}
