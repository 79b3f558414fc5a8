package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.fixtures.Seed;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.stats.Figure;
import org.halflight.stats.Sample;
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
    assertThat(runs.reach()).isEqualTo(ChangeExtent.SLOW_SPEEDS);
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
        .contains("5 firings cannot show a change of scatter at a single speed.")
        .doesNotContain("each would find")
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
    assertThat(all.reach()).isEqualTo(ChangeExtent.WHOLE_DIAL);
    assertThat(all.common().orElseThrow().stops()).isCloseTo(-0.30, within(1e-9));
    assertThat(all.common().orElseThrow().apart()).isEmpty();

    RunSummary found = dial(Fired.asFound(), 1, 0.05, 0.03, 5).run();
    Fired left = Fired.asLeft();
    for (SpeedSummary speed : found.speeds()) {
      boolean one = speed.speed().label().equals("1/8");
      left.at(speed.speed().label(), Fired.errors(9, 5, one ? 0.45 : 0.05, 0.03));
    }
    RunComparison one = RunComparison.of(found, left.run());
    assertThat(one.reach()).isEqualTo(ChangeExtent.ONE_SPEED);
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
    assertThat(runs.reach()).isEqualTo(ChangeExtent.WHOLE_DIAL);
    CommonShift common = runs.common().orElseThrow();
    assertThat(common.stops()).isCloseTo(-0.30, within(1e-9));
    assertThat(common.apart()).extracting(MarkedSpeed::label).containsExactly("1/8");
  }

  @Test
  void oneSpeedAloneMovesNoDialOfFewSpeeds() {
    // Three speeds: without the one that moved nothing is left that did.
    Fired found = Fired.asFound();
    Fired left = Fired.asLeft();
    for (String speed : List.of("1/30", "1/60", "1/125")) {
      found.at(speed, Fired.errors(1, 5, 0.0, 0.1));
      left.at(speed, Fired.errors(2, 5, speed.equals("1/60") ? 0.4 : 0.1, 0.1));
    }
    RunComparison runs = RunComparison.of(found.run(), left.run());
    assertThat(runs.common().orElseThrow().leftOut()).isEqualTo(MarkedSpeed.parse("1/60"));
    assertThat(runs.common().orElseThrow().stops()).isCloseTo(0.1, within(1e-9));
    assertThat(runs.dialMoved()).isFalse();
  }

  @Test
  void whatARunLiesOffByDoesNotBecomeLessOverManySpeeds() {
    // All speeds 1.5 sd slower: the mean of eight speeds is known to 0.2 sd if firings alone count.
    RunComparison runs =
        RunComparison.of(
            dial(Fired.asFound(), 1, 0.0, 0.03, 5).run(),
            dial(Fired.asLeft(), 2, 0.045, 0.03, 5).run());
    assertThat(runs.common().orElseThrow().p()).isGreaterThan(0.05);
    assertThat(runs.dialMoved()).isFalse();
  }

  @Test
  void aSpeedThatScattersWildlyHidesNoShiftOfItsNeighbours() {
    RunComparison runs =
        RunComparison.of(
            dial(Fired.asFound(), 1, 0.0, 0.03, 5)
                .at("1/250", Fired.errors(3, 5, 0, 0.4))
                .at("1/500", Fired.errors(5, 5, 0, 0.03))
                .run(),
            dial(Fired.asLeft(), 2, 0.0, 0.03, 5)
                .at("1/250", Fired.errors(4, 5, 0, 0.4))
                .at("1/500", Fired.errors(6, 5, 0.25, 0.03))
                .run());
    assertThat(runs.changed()).extracting(s -> s.speed().label()).containsExactly("1/500");
  }

  @Test
  void ofUnequalNumbersTheFirstAreCompared() {
    // Both runs become slower by 0.02 stop from firing to firing, and nothing else is different.
    double[] ten = java.util.stream.IntStream.range(0, 10).mapToDouble(i -> 0.02 * i).toArray();
    double[] five = java.util.Arrays.copyOf(ten, 5);
    Fired found = Fired.asFound();
    Fired left = Fired.asLeft();
    for (String speed : List.of("1", "1/8", "1/60", "1/250")) {
      found.at(speed, five);
      left.at(speed, ten);
    }
    RunComparison runs = RunComparison.of(found.run(), left.run());
    assertThat(runs.anythingChanged()).isFalse();
    assertThat(runs.speeds())
        .allSatisfy(
            speed -> {
              assertThat(speed.compared()).isEqualTo(5);
              assertThat(speed.shift().get().shift()).isCloseTo(0, within(1e-12));
              assertThat(speed.meanAfter().orElseThrow()).isCloseTo(0.04, within(1e-12));
            });
    assertThat(ComparisonWords.warnings(runs))
        .containsExactly(
            "The runs have unequal numbers of firings at 1 s to 1/250. Only the first of each run"
                + " are compared.");
  }

  @Test
  void anotherRigIsAllowedForAndSaid() {
    RunSummary found = asMeasured(dial(Fired.asFound(), 1, 0.0, 0.002, 5).run(), "RIG-0001");
    RunSummary left = asMeasured(dial(Fired.asLeft(), 2, 0.01, 0.002, 5).run(), "RIG-0001");
    RunSummary other = asMeasured(dial(Fired.asLeft(), 2, 0.01, 0.002, 5).run(), "RIG-0002");
    RunComparison same = RunComparison.of(found, left);
    assertThat(same.otherRig()).isFalse();
    assertThat(same.changed()).hasSize(8);
    RunComparison two = RunComparison.of(found, other);
    assertThat(two.otherRig()).isTrue();
    // 0.007 stop evenly spread for either resonator: 0.01 stop between two rigs is nothing.
    assertThat(two.anythingChanged()).isFalse();
    assertThat(ComparisonWords.warnings(two).get(0))
        .startsWith("Two rigs measured these runs, so a difference may be between the rigs.");
    assertThat(ComparisonWords.warnings(same)).isEmpty();
  }

  private static RunSummary asMeasured(RunSummary run, String rig) {
    return new RunSummary(
        run.phase(),
        run.speeds().stream()
            .map(
                speed ->
                    new SpeedSummary(
                        speed.speed(),
                        speed.reference(),
                        speed.phase(),
                        speed.releases(),
                        speed.errors(),
                        speed.afterRestStops(),
                        speed.tolerance(),
                        new HowMeasured(speed.travel(), DecisionBasis.UNCALIBRATED)))
            .toList(),
        RunsBehind.ofRigs(Set.of(rig)));
  }

  @Test
  void repeatedRunsOfThisCameraTakeThePlaceOfTheAllowance() {
    RunSummary usual = dial(Fired.asFound(), 1, 0.0, 0.03, 5).run();
    RunSummary left = dial(Fired.asLeft(), 2, 0.1, 0.03, 5).run();
    // Six runs whose means are all alike: this camera repeats far better than is allowed for.
    List<Map<MarkedSpeed, Sample>> repeats = new ArrayList<>();
    for (int run = 0; run < 6; run++) {
      Map<MarkedSpeed, Sample> errors = new HashMap<>();
      for (SpeedSummary speed : usual.speeds()) {
        double off = 0.003 * Math.cos(run + 7.0 * speed.speed().literalSeconds());
        errors.put(speed.speed(), Sample.of(Fired.errors(run, 5, off, 0.03)));
      }
      repeats.add(errors);
    }
    RunSummary repeated =
        new RunSummary(usual.phase(), usual.speeds(), new RunsBehind(Set.of(), repeats));
    RunComparison without = RunComparison.of(usual, left);
    RunComparison with = RunComparison.of(repeated, left);
    assertThat(without.byRepeatedRuns()).isFalse();
    assertThat(without.changed()).isEmpty();
    assertThat(with.byRepeatedRuns()).isTrue();
    assertThat(with.changed()).hasSize(8);
    assertThat(String.join(" ", ComparisonWords.all(with)))
        .contains("while the runs differ no more than the repeated runs of this camera do");
    assertThat(String.join(" ", ComparisonWords.all(without)))
        .contains("by a correlation of at most 0.3");
    // Three runs tell too little.
    RunSummary thrice =
        new RunSummary(
            usual.phase(), usual.speeds(), new RunsBehind(Set.of(), repeats.subList(0, 3)));
    assertThat(RunComparison.of(thrice, left).byRepeatedRuns()).isFalse();
  }

  @Test
  void moreFiringsAreAdvisedOnlyWhereTheyHelp() {
    String three =
        String.join(
            " ",
            ComparisonWords.all(
                RunComparison.of(
                    dial(Fired.asFound(), 1, 0.0, 0.1, 3).run(),
                    dial(Fired.asLeft(), 2, 0.05, 0.1, 3).run())));
    assertThat(three)
        .containsPattern("With 6 firings of each speed, changes \\d\\d % smaller would show");
    String ten =
        String.join(
            " ",
            ComparisonWords.all(
                RunComparison.of(
                    dial(Fired.asFound(), 1, 0.0, 0.1, 10).run(),
                    dial(Fired.asLeft(), 2, 0.05, 0.1, 10).run())));
    assertThat(ten)
        .contains("With 10 firings of each speed, more firings hardly help. Repeat the run.")
        .doesNotContain("30 each");
  }

  @Test
  void noEvidenceIsNotTheSame() {
    RunComparison runs =
        RunComparison.of(
            Fired.asFound().at("1/8", Fired.errors(1, 3, 0.1, 0.2)).run(),
            Fired.asLeft().at("1/8", Fired.errors(2, 3, 0.0, 0.2)).run());
    SpeedComparison speed = runs.speeds().get(0);
    assertThat(speed.finding()).isEqualTo(ShiftFinding.NO_EVIDENCE);
    // 3 against 3 and equal scatter: more than three standard deviations are wanted.
    assertThat(speed.findableStops().orElseThrow()).isGreaterThan(3 * 0.2);
    assertThat(ComparisonWords.speed(speed).get(0))
        .contains("No change shown; that is not the same as no change.")
        .contains(" could be missed.");
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
    assertThat(ComparisonWords.speed(speed).get(1))
        .startsWith("The rank test, which treats all firings as independent, agrees");
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
        .contains("1/8: timed firings before 1, after 2; a comparison needs two of each.")
        .contains("1/4: timed firings before 0");
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
            "The set-ups differed (shutter: in the camera before, not noted after), so a change"
                + " may come from the set-up and not the shutter.",
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
