package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.words.ComparisonWords;
import org.junit.jupiter.api.Test;

/** A quick look against a run of five firings each: by what both have, and never more. */
class QuickComparedTest {
  private static SpeedSummary quick(String speed, double... errors) {
    return new SpeedSummary(
        MarkedSpeed.parse(speed),
        Reference.EXACT,
        Phase.AS_FOUND,
        new ReleaseCounts(errors.length, new EnumMap<>(Map.of(Outcome.TIMED, errors.length))),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.THIRD,
        new HowMeasured(
            Optional.empty(), new DecisionBasis(RigKnowledge.NO_RIG, DecisionRule.QUICK)));
  }

  private static RunSummary found(SpeedSummary... speeds) {
    return new RunSummary(Phase.AS_FOUND, Arrays.asList(speeds));
  }

  @Test
  void speedWithOneFiringIsNotCompared() {
    RunComparison runs =
        RunComparison.of(
            found(quick("1/2", 0.80, 0.83, 0.79, 0.81), quick("1/30", 0.9)),
            Fired.asLeft()
                .at("1/2", 0.01, 0.02, 0.00, 0.03, 0.01)
                .at("1/30", 0.01, 0.02, 0.00, 0.03, 0.01)
                .run());
    assertThat(runs.at(MarkedSpeed.parse("1/30")).orElseThrow().finding())
        .isEqualTo(ShiftFinding.NOT_COMPARABLE);
    assertThat(runs.changed())
        .extracting(SpeedComparison::speed)
        .containsExactly(MarkedSpeed.parse("1/2"));
    List<String> said = ComparisonWords.summary(runs);
    assertThat(said)
        .contains(
            "1/2 changed: it is 0.80 stop faster than before."
                + " Other speeds have too few firings to compare.")
        .noneMatch(sentence -> sentence.contains("alone"));
  }

  @Test
  void firingByWhichTheSpeedWasPickedIsLeftOut() {
    RunComparison runs =
        RunComparison.of(
            found(quick("1/2", 0.30, 0.02, 0.04, 0.03)),
            Fired.asLeft().at("1/2", 0.03, 0.02, 0.04, 0.03, 0.01).run());
    SpeedComparison speed = runs.at(MarkedSpeed.parse("1/2")).orElseThrow();
    assertThat(speed.compared()).isEqualTo(3);
    assertThat(speed.meanBefore().orElseThrow()).isLessThan(0.05);
  }
}
