package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.halflight.session.FiringCondition.LENS_LEVEL;
import static org.halflight.session.FiringCondition.LENS_UP;
import static org.halflight.session.FiringCondition.LONG_PRESS;
import static org.halflight.session.FiringCondition.QUICK_TAP;
import static org.halflight.session.FiringCondition.STOPPED_DOWN;
import static org.halflight.session.FiringCondition.WARMED;
import static org.halflight.session.FiringCondition.WIDE_OPEN;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S60;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.Test;

/** What the person says of a firing, and what it does to means. All shutters are invented. */
class FiringConditionsTest {
  private final InventedBench bench = new InventedBench();

  @Test
  void whatContradictsIsReplacedAndWhatIsThereIsTakenOff() {
    FiringConditions tap = FiringConditions.NONE.with(QUICK_TAP).with(WIDE_OPEN).with(WARMED);
    assertThat(tap.with(LONG_PRESS).with(STOPPED_DOWN).said())
        .containsExactly(WARMED, LONG_PRESS, STOPPED_DOWN);
    assertThat(tap.toggled(QUICK_TAP).words()).isEqualTo("warmed wide-open");
    assertThat(FiringConditions.parse(tap.words())).isEqualTo(tap);
    assertThatThrownBy(() -> FiringConditions.parse("wide-open stopped-down"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SessionInput.ConditionsAre(tap))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theFiringsOwnConditionWinsOverThatOfTheRun() {
    RunConditions run =
        new RunConditions(OptionalDouble.empty(), Map.of("attitude", "lens-up", "stop", "f/8"));
    FiringConditions nothing = FiringConditions.NONE;
    assertThat(nothing.inForce(FiringCondition.Kind.ATTITUDE, run)).isEqualTo("lens-up");
    assertThat(nothing.inForce(FiringCondition.Kind.APERTURE, run)).isEqualTo("f/8");
    assertThat(nothing.inForce(FiringCondition.Kind.WARMTH, run)).isEmpty();
    FiringConditions own = nothing.with(LENS_LEVEL).with(WIDE_OPEN);
    assertThat(own.inForce(FiringCondition.Kind.ATTITUDE, run)).isEqualTo("lens-level");
    assertThat(own.inForce(FiringCondition.Kind.APERTURE, run)).isEqualTo("wide-open");
    // What the whole run is set up for is nothing special in it.
    assertThat(own.with(LENS_UP).within(run).said()).containsExactly(WIDE_OPEN);
    assertThat(own.within(RunConditions.NONE).said()).containsExactly(WIDE_OPEN);
    assertThat(own.within(run)).isEqualTo(own);
  }

  @Test
  void whatLastsHoldsFromTheNextFiringUntilItIsSaidOtherwiseOrAnotherRunBegins() {
    bench.begin(Phase.AS_LEFT, 9, S60);
    bench.fire(S60, 0);
    holds(WARMED, LENS_UP);
    bench.fire(S60, 0);
    bench.fire(S60, 0);
    holds(LENS_UP);
    bench.fire(S60, 0);
    bench.begin(Phase.AS_LEFT, 8, S60);
    bench.fire(S60, 0);
    assertThat(bench.session.results())
        .extracting(result -> result.conditions().words())
        .containsExactly("", "warmed lens-up", "warmed lens-up", "lens-up", "");
  }

  @Test
  void aSpecialFiringIsKeptOutOfTheMeanAndItsSpeedIsShownAgain() {
    bench.begin(Phase.AS_LEFT, 3, S60, S125);
    bench.fire(S60, 0.1);
    bench.fire(S60, 0.1);
    bench.fire(S60, 1.5);
    assertThat(bench.session.shown()).contains(S125);
    says(3, QUICK_TAP);
    assertThat(bench.session.shown()).contains(S60);
    assertThat(bench.session.goodAt(S60)).isEqualTo(2);
    bench.fire(S60, 0.1);
    assertThat(bench.session.shown()).contains(S125);
    SpeedSummary summary = summary();
    assertThat(summary.errors().n()).isEqualTo(3);
    assertThat(summary.meanStops().orElseThrow()).isBetween(0.099, 0.101);
    assertThat(summary.tries()).isEqualTo(4);
    assertThat(summary.oddOnes().orElseThrow().odd()).isZero();
    assertThat(Sentences.speed(summary))
        .contains("Left out of the mean: quick tap (firings: 1) 1.50 stop slow.");
    assertThat(AlikeFirings.inMeans(bench.session.results()))
        .doesNotContain(bench.result(3).key())
        .hasSize(3);
    // Taken off again it counts.
    says(3);
    assertThat(bench.session.goodAt(S60)).isEqualTo(4);
  }

  @Test
  void aSpeedFiredUnderOneConditionHasItsMean() {
    bench.begin(Phase.AS_LEFT, 3, S60, S125);
    holds(LENS_UP);
    bench.fire(S60, 0.2);
    bench.fire(S60, 0.2);
    bench.fire(S60, 0.2);
    assertThat(bench.session.shown()).contains(S125);
    assertThat(summary().errors().n()).isEqualTo(3);
    assertThat(Sentences.speed(summary())).contains("All its firings: lens up.");
  }

  @Test
  void firingsUnderDifferentConditionsHaveNoMeanTogether() {
    bench.begin(Phase.AS_LEFT, 3, S60);
    holds(LENS_UP);
    bench.fire(S60, 0.2);
    bench.fire(S60, 0.4);
    holds(WARMED);
    bench.fire(S60, 0.6);
    SpeedSummary summary = summary();
    assertThat(summary.errors().n()).isZero();
    assertThat(Sentences.speed(summary))
        .contains(
            "1/60: its firings were made under different conditions, so there is no mean.",
            "Left out of the mean: lens up (firings: 2) 0.30 stop slow;"
                + " warmed (firings: 1) 0.60 stop slow.");
  }

  @Test
  void aRestInTheMiddleOfARunIsToldAndTheFirstOfARunIsContradicted() {
    bench.begin(Phase.AS_FOUND, 5, S60);
    bench.fire(S60, 0.9);
    bench.fire(S60, 0.1);
    bench.fire(S60, 0.7);
    assertThat(bench.result(1).afterRest()).isTrue();
    says(3, FiringCondition.FIRST_AFTER_REST);
    says(1, FiringCondition.NOT_AFTER_REST);
    assertThat(bench.session.results())
        .extracting(FiringResult::afterRest)
        .containsExactly(false, false, true);
    assertThat(summary().errors().n()).isEqualTo(2);
    assertThat(summary().afterRestStops().orElseThrow()).isBetween(0.69, 0.71);
    bench.fire(S60, 0.5);
    says(4, FiringCondition.FIRST_AFTER_REST);
    assertThat(Sentences.speed(summary()))
        .contains("Left out of the mean: first after rest (firings: 1) 0.50 stop slow.");
    assertThat(summary().oddOnes().orElseThrow().releases()).isEqualTo(2);
  }

  private SpeedSummary summary() {
    return SpeedSummary.of(
        bench.session.results().stream()
            .filter(r -> r.run() == 1 && r.shown().filter(S60::equals).isPresent())
            .toList(),
        Tolerance.THIRD);
  }

  private void holds(FiringCondition... conditions) {
    bench.handle(new SessionInput.ConditionsAre(of(conditions)));
  }

  private void says(int number, FiringCondition... conditions) {
    bench.handle(new SessionInput.FiringUnder(bench.result(number).key(), of(conditions)));
  }

  private static FiringConditions of(FiringCondition... conditions) {
    return List.of(conditions).stream()
        .reduce(FiringConditions.NONE, FiringConditions::with, (one, other) -> other);
  }
}
