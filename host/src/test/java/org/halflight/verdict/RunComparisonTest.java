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
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.stats.Figure;
import org.halflight.validation.ModelRuns;
import org.halflight.words.ComparisonWords;
import org.junit.jupiter.api.Test;

class RunComparisonTest {
  private static final List<MarkedSpeed> DIAL = Dial.find("leaf").orElseThrow().speeds();
  private static final List<String> SLOW = List.of("1", "1/2", "1/4", "1/8", "1/15");
  private static final List<String> FAST = List.of("1/30", "1/60", "1/125", "1/250", "1/500");

  private static RunComparison dirtyAndCleaned(long seed, int firings) {
    return RunComparison.of(
        new ModelRuns(InventedShutters.dirtySlowTrain(DIAL, seed)).next(Phase.AS_FOUND, firings),
        new ModelRuns(InventedShutters.cleanedSlowTrain(DIAL, seed + 1))
            .next(Phase.AS_LEFT, firings));
  }

  private static Fired dial(Fired run, long seed, double shift, double sd, int n) {
    for (String speed : List.of("1", "1/2", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125")) {
      run.at(speed, Fired.errors(seed + speed.hashCode(), n, shift, sd));
    }
    return run;
  }

  @Test
  void findsWhatCleaningTheSlowTrainDid() {
    RunComparison runs = dirtyAndCleaned(20, 5);
    assertThat(runs.changed()).extracting(s -> s.speed().label()).containsExactlyElementsOf(SLOW);
    assertThat(runs.reach()).isEqualTo(Reach.SLOW_SPEEDS);
    assertThat(runs.dialMoved()).isFalse();
    for (SpeedComparison speed : runs.part(false)) {
      assertThat(speed.finding()).isEqualTo(ShiftFinding.LESS_THAN_A_TENTH);
    }
    assertThat(runs.slowScatter().found()).isTrue();
    assertThat(runs.slowScatter().ratio().get().ratio()).isLessThan(0.5);
    assertThat(runs.fastScatter().found()).isFalse();
    // Five firings of one speed do not resolve a scatter, and the comparison does not pretend so.
    assertThat(runs.speeds()).noneMatch(speed -> speed.scatter().found());
  }

  @Test
  void saysItAsARepairerWould() {
    String said = String.join("\n", ComparisonWords.all(dirtyAndCleaned(20, 5)));
    assertThat(said)
        .contains("The speeds that the slow-speed train governs changed: 1 s to 1/15 are")
        .contains("stop faster than before")
        .contains("At 1/30 to 1/500 any change is less than a tenth of a stop.")
        .contains("The slow speeds taken together run more evenly: their scatter fell from")
        .contains("is not resolvable with 5 firings")
        .doesNotContain("{");
  }

  @Test
  void leavesTheFastSpeedsAloneWhateverTheSeed(@Seed(100) long first) {
    int evener = 0;
    for (long seed = first; seed < first + 30; seed++) {
      RunComparison runs = dirtyAndCleaned(seed, 5);
      assertThat(runs.changed())
          .as("seed %d", seed)
          .extracting(s -> s.speed().label())
          .doesNotContainAnyElementsOf(FAST);
      assertThat(runs.changed().size()).as("seed %d", seed).isGreaterThanOrEqualTo(4);
      evener += runs.slowScatter().found() ? 1 : 0;
    }
    assertThat(evener).as("scatter found in 30 pairs of runs").isGreaterThanOrEqualTo(24);
  }

  @Test
  void tellsTheWholeDialFromOneSpeed() {
    RunComparison all =
        RunComparison.of(
            dial(Fired.asFound(), 1, 0.05, 0.03, 5).run(),
            dial(Fired.asLeft(), 2, -0.25, 0.03, 5).run());
    assertThat(all.reach()).isEqualTo(Reach.WHOLE_DIAL);
    assertThat(all.common().orElseThrow().stops()).isCloseTo(-0.30, within(1e-9));
    assertThat(all.common().orElseThrow().apart()).isEmpty();

    RunSummary found = dial(Fired.asFound(), 1, 0.05, 0.03, 5).run();
    Fired left = Fired.asLeft();
    for (SpeedSummary speed : found.speeds()) {
      boolean one = speed.speed().label().equals("1/8");
      left.at(speed.speed().label(), Fired.errors(9, 5, one ? 0.45 : 0.05, 0.03));
    }
    RunComparison one = RunComparison.of(found, left.run());
    assertThat(one.reach()).isEqualTo(Reach.ONE_SPEED);
    assertThat(one.dialMoved()).isFalse();
    assertThat(String.join(" ", ComparisonWords.summary(one)))
        .contains("1/8 alone changed: it is 0.40 stop slower than before.");
  }

  @Test
  void seesASpeedThatStandsApartFromADialThatMoved() {
    RunSummary found = dial(Fired.asFound(), 1, 0.05, 0.03, 5).run();
    Fired left = Fired.asLeft();
    for (SpeedSummary speed : found.speeds()) {
      boolean one = speed.speed().label().equals("1/8");
      left.at(speed.speed().label(), Fired.errors(9, 5, one ? 0.75 : -0.25, 0.03));
    }
    RunComparison runs = RunComparison.of(found, left.run());
    assertThat(runs.reach()).isEqualTo(Reach.WHOLE_DIAL);
    CommonPart common = runs.common().orElseThrow();
    assertThat(common.stops()).isCloseTo(-0.30, within(1e-9));
    assertThat(common.apart()).extracting(MarkedSpeed::label).containsExactly("1/8");
  }

  @Test
  void noEvidenceIsNotTheSame() {
    RunComparison runs =
        RunComparison.of(
            Fired.asFound().at("1/8", Fired.errors(1, 3, 0.1, 0.2)).run(),
            Fired.asLeft().at("1/8", Fired.errors(2, 3, 0.0, 0.2)).run());
    SpeedComparison speed = runs.speeds().get(0);
    assertThat(speed.finding()).isEqualTo(ShiftFinding.NO_EVIDENCE);
    // 3 against 3 at 2 % and equal scatter: more than three standard deviations are wanted.
    assertThat(speed.findableStops().orElseThrow()).isGreaterThan(3 * 0.2);
    assertThat(ComparisonWords.speed(speed).get(0))
        .contains("no evidence of a change, which is not the same as no change")
        .contains(" is found in 8 of 10 cases");
  }

  @Test
  void ranksFromSixUp() {
    RunSummary five = Fired.asFound().at("1/8", Fired.errors(1, 5, 0.1, 0.02)).run();
    RunSummary six = Fired.asFound().at("1/8", Fired.errors(1, 6, 0.1, 0.02)).run();
    RunSummary after = Fired.asLeft().at("1/8", Fired.errors(2, 6, 0.5, 0.02)).run();
    assertThat(RunComparison.of(five, after).speeds().get(0).rankTest())
        .isEqualTo(new Figure.NotEnoughFirings<>(5, 6));
    SpeedComparison speed = RunComparison.of(six, after).speeds().get(0);
    // All of one above all of the other: 2 / (12 choose 6).
    assertThat(speed.rankTest().get().p()).isCloseTo(2 / 924.0, within(1e-12));
    assertThat(speed.rankShift().get().shift()).isCloseTo(0.4, within(0.03));
    assertThat(ComparisonWords.speed(speed).get(1)).startsWith("The rank test says so too");
  }

  @Test
  void tooFewFiringsAreNoComparison() {
    RunComparison runs =
        RunComparison.of(
            Fired.asFound().at("1/8", 0.2).hanging("1/4", 5).run(),
            Fired.asLeft().at("1/8", 0.1, 0.2).at("1/4", 0.1, 0.2, 0.3).run());
    assertThat(runs.speeds())
        .extracting(SpeedComparison::finding)
        .containsOnly(ShiftFinding.NOT_COMPARABLE);
    assertThat(String.join("\n", ComparisonWords.all(runs)))
        .contains("1/8: 1 timed firings before, 2 after; two each are the least to compare.")
        .contains("1/4: 0 timed firings before");
  }

  @Test
  void firingsThatAreAllAlikeSayNothingAboutChance() {
    RunComparison runs =
        RunComparison.of(
            Fired.asFound().at("1/8", 0.25, 0.25, 0.25).run(),
            Fired.asLeft().at("1/8", 0.5, 0.5, 0.5).run());
    assertThat(runs.speeds().get(0).finding()).isEqualTo(ShiftFinding.NOT_COMPARABLE);
    assertThat(ComparisonWords.speed(runs.speeds().get(0)).get(0)).contains("alike");
  }

  @Test
  void warnsOfUnlikeSetUps() {
    RunSummary found = Fired.asFound().at("1", 0.1, 0.2).at("1/60", 0.1, 0.2).run();
    RunSummary left = Fired.asLeft().at("1", 0.1, 0.2).at("1/30", 0.1, 0.2).run();
    RunComparison runs =
        RunComparison.of(
            found, left, Map.of("shutter", "in the camera", "stop", "2.8"), Map.of("stop", "2.8"));
    assertThat(ComparisonWords.warnings(runs))
        .containsExactly(
            "The set-ups were unlike (shutter: in the camera before, not noted after), so a change"
                + " may be the set-up's and not the shutter's.",
            "Fired in the earlier run only: 1/60.",
            "Fired in the later run only: 1/30.");
  }

  @Test
  void holdsDifferentReadingsOfTheMarkingsAgainstOne() {
    // APEX: 1/60 stands for 1/64 s, so the same times read literally are 0.093 stop less slow.
    double between = Math.log(64.0 / 60) / Math.log(2);
    double[] exact = Fired.errors(1, 5, 0.2, 0.02);
    double[] literal = java.util.Arrays.stream(exact).map(e -> e - between).toArray();
    RunComparison runs =
        RunComparison.of(
            Fired.asFound().at("1/60", exact).run(),
            Fired.asLeft()
                .at("1/60", Reference.LITERAL, Map.of(), OptionalDouble.empty(), literal)
                .run());
    assertThat(runs.readings()).isTrue();
    assertThat(runs.speeds().get(0).shift().get().shift()).isCloseTo(0, within(1e-12));
    assertThat(ComparisonWords.warnings(runs).get(0)).contains("read differently");
  }

  @Test
  void outcomesHeadTheRunGravestFirst() {
    RunStatistics run =
        RunStatistics.of(
            Fired.asFound()
                .at("1", Reference.EXACT, Map.of(Outcome.DID_NOT_OPEN, 2), OptionalDouble.of(1), 1)
                .hanging("1/4", 3, 0.1, 0.2)
                .run());
    assertThat(run.troubles())
        .containsExactly(
            new ShutterTrouble(MarkedSpeed.parse("1/4"), Outcome.STUCK_OPEN, 3, 5),
            new ShutterTrouble(MarkedSpeed.parse("1"), Outcome.DID_NOT_OPEN, 2, 4));
  }
}
