package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.QuickRepeat;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.QuickAsFound.Finding;
import org.junit.jupiter.api.Test;

class QuickAsFoundTest {
  private static final int USUAL = 5;

  private static SpeedSummary speed(String label, OptionalDouble afterRest, double... errors) {
    int timed = errors.length + (afterRest.isPresent() ? 1 : 0);
    return new SpeedSummary(
        MarkedSpeed.parse(label),
        Reference.EXACT,
        Phase.AS_FOUND,
        new ReleaseCounts(timed, new EnumMap<>(Map.of(Outcome.TIMED, timed))),
        Sample.of(errors),
        afterRest,
        Tolerance.THIRD,
        new HowMeasured(
            Optional.empty(), new DecisionBasis(RigKnowledge.NO_RIG, DecisionRule.QUICK)));
  }

  private static SpeedSummary fired(String label, double... errors) {
    return speed(label, OptionalDouble.empty(), errors);
  }

  @Test
  void oneFiringHasNoVerdict() {
    SpeedSummary one = fired("1/30", 0.9);
    assertThat(QuickAsFound.of(one)).isEqualTo(Finding.ONE_FIRING);
    assertThat(one.verdict()).isEqualTo(Verdict.TOO_FEW);
    assertThat(one.scatterStops()).isEmpty();
    assertThat(QuickAsFound.of(fired("1/30"))).isEqualTo(Finding.NOT_KNOWN);
    assertThat(QuickAsFound.of(speed("1/2", OptionalDouble.of(0.9)))).isEqualTo(Finding.ONE_FIRING);
  }

  @Test
  void firstAfterRestIsReasonToLookAgainAndCountsForNothing() {
    List<SpeedSummary> speeds =
        List.of(speed("1/2", OptionalDouble.of(0.8)), fired("1/30", 0.1), fired("1/500", -0.3));
    assertThat(QuickAsFound.next(speeds, USUAL))
        .map(QuickRepeat::speed)
        .isEqualTo(Optional.of(MarkedSpeed.parse("1/2")));
  }

  @Test
  void firingsUntilTheLargestErrorIsKnown() {
    List<Double> drawn = List.of(0.80, 0.84, 0.76, 0.81, 0.79);
    List<String> proposed = new ArrayList<>();
    int fired = 1;
    Optional<QuickRepeat> next;
    do {
      double[] so = drawn.subList(0, fired).stream().mapToDouble(each -> each).toArray();
      next = QuickAsFound.next(List.of(fired("1/2", so), fired("1/30", 0.1)), USUAL);
      next.ifPresent(each -> proposed.add(each.speed() + " " + each.number()));
      fired++;
    } while (next.isPresent());
    assertThat(proposed).containsExactly("1/2 1", "1/2 2");
    SpeedSummary slow = fired("1/2", 0.80, 0.84, 0.76);
    assertThat(slow.verdict()).isEqualTo(Verdict.SLOW);
    assertThat(QuickAsFound.of(slow)).isEqualTo(Finding.DECIDED);
  }

  @Test
  void scatteredSpeedIsFiredAsOftenAsInAUsualRunAndNoMore() {
    double[] wild = {0.5, -0.4, 0.6, -0.1, 0.7};
    List<SpeedSummary> four = List.of(fired("1/2", Arrays.copyOf(wild, 4)), fired("1/30", 0.0));
    List<SpeedSummary> five = List.of(fired("1/2", wild), fired("1/30", 0.0));
    assertThat(QuickAsFound.next(four, USUAL)).isPresent();
    assertThat(QuickAsFound.next(five, USUAL)).isEmpty();
    assertThat(QuickAsFound.of(five.get(0))).isEqualTo(Finding.STILL_OPEN);
  }

  @Test
  void meanOnALimitIsKnownWhereItsIntervalIsNarrow() {
    assertThat(QuickAsFound.of(fired("1/2", 0.32, 0.34, 0.33))).isEqualTo(Finding.MEAN_KNOWN);
    assertThat(QuickAsFound.isKnown(fired("1/2", 0.33, 0.33)))
        .as("two firings may agree by chance")
        .isFalse();
  }

  @Test
  void riskOfAllLooksAtAllSpeedsTogether() {
    double all = 0;
    for (int n = QuickRepeat.LEAST + 1; n <= 1000; n++) {
      all += 4 * DecisionRule.QUICK.risk(n);
    }
    assertThat(all).isLessThan(DecisionRule.RISK).isCloseTo(DecisionRule.RISK, within(1e-4));
    assertThat(DecisionRule.QUICK.decides(2)).isFalse();
    assertThat(DecisionRule.QUICK.decides(3)).isTrue();
  }
}
