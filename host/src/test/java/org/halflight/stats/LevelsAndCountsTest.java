package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is refused, and from how many firings on there is a figure. */
class LevelsAndCountsTest {
  private static final Sample FIVE = Sample.of(1, 2, 4, 3, 7);
  private static final Sample SIX = Sample.of(2, 2, 5, 3, 8, 4);
  private static final double[] PLACES = {1, 2, 3, 4, 5};

  /** All that takes a level, a content or a risk. */
  static Stream<Arguments> takersOfLevels() {
    Map<String, DoubleConsumer> takers =
        Map.ofEntries(
            Map.entry("interval", level -> new Interval(0, 1, level)),
            Map.entry("mean", FIVE::meanInterval),
            Map.entry("Welch", level -> MeanShift.welch(FIVE, SIX, level)),
            Map.entry("pooled", level -> MeanShift.pooled(FIVE, SIX, level)),
            Map.entry("Hodges and Lehmann", level -> HodgesLehmann.of(FIVE, SIX, level)),
            Map.entry("ratio", level -> ScatterRatio.of(FIVE, SIX, level)),
            Map.entry("Theil and Sen", level -> TheilSen.ofOrder(FIVE, level)),
            Map.entry("outliers", level -> GeneralisedEsd.of(twenty(), 2, level)),
            Map.entry("line", level -> LineFit.of(PLACES, FIVE.values()).prediction(1, level)),
            Map.entry("noncentral t", level -> new NoncentralT(4, 1).quantile(level)),
            Map.entry("scatter power", level -> new ScatterPower(10, 1).of(5, 5, 3, level)),
            Map.entry("shift power", level -> ShiftPower.of(5, 1, level)),
            Map.entry("detectable shift", level -> ShiftPower.detectableShiftInSds(5, level, 0.8)),
            Map.entry("firings needed", level -> ShiftPower.firingsNeeded(1, level, 0.8)),
            Map.entry("content", content -> ToleranceFactor.oneSided(5, content, 0.9)),
            Map.entry("confidence", confidence -> ToleranceFactor.oneSided(5, 0.9, confidence)),
            Map.entry("Natrella", content -> ToleranceFactor.oneSidedNatrella(50, content, 0.9)),
            Map.entry("two-sided", confidence -> ToleranceFactor.twoSided(5, 0.9, confidence)),
            Map.entry("Howe", content -> ToleranceFactor.twoSidedHowe(5, content, 0.9)));
    return takers.entrySet().stream().map(each -> Arguments.of(each.getKey(), each.getValue()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("takersOfLevels")
  void aLevelIsAboveNoneAndBelowAll(String name, DoubleConsumer taker) {
    for (double none : new double[] {0, 1, -0.1, 1.5, Double.NaN}) {
      refused(() -> taker.accept(none));
    }
    taker.accept(0.5);
  }

  @Test
  void aPowerLiesAboveTheRiskAndBelowAll() {
    for (double power : new double[] {0.05, 0.04, 1}) {
      refused(() -> ShiftPower.detectableShiftInSds(5, 0.05, power));
      refused(() -> ShiftPower.firingsNeeded(1, 0.05, power));
    }
    refused(() -> ShiftPower.firingsNeeded(0, 0.05, 0.8));
    refused(() -> new ScatterPower(0, 1));
    assertThat(new ScatterPower(1, 1).of(3, 3, 3, 0.05)).isBetween(0.0, 1.0);
    refused(() -> new ScatterPower(10, 1).of(2, 3, 3, 0.05));
    refused(() -> new ScatterPower(10, 1).of(3, 3, 0, 0.05));
  }

  /** Timestamps that do not go with the firings are refused however few these are. */
  @Test
  void timesGoWithTheFirings() {
    refused(() -> TheilSen.of(new double[] {1, 2}, Sample.of(1, 2, 3), 0.95));
    refused(() -> TheilSen.of(new double[] {1, 1, 2}, Sample.of(1, 2, 3), 0.95));
    refused(() -> TheilSen.of(new double[] {1, 2, 3, 4, 4}, FIVE, 0.95));
  }

  @Test
  void theLeastNumberOfFiringsIsEnoughAndOneLessIsNot() {
    assertThat(BrownForsythe.of(List.of(first(3), SIX)).known()).isPresent();
    assertThat(BrownForsythe.of(List.of(first(2), SIX)))
        .isEqualTo(new NotEnoughFirings<BrownForsythe>(2, 3));
    assertThat(MeanShift.welch(first(2), SIX, 0.95).known()).isPresent();
    assertThat(MeanShift.welch(first(1), SIX, 0.95).known()).isEmpty();
    assertThat(ScatterRatio.of(first(2), SIX, 0.95).known()).isPresent();
    assertThat(ScatterRatio.of(first(1), SIX, 0.95).known()).isEmpty();
    assertThat(HodgesLehmann.of(first(3), SIX, 0.5).known()).isPresent();
    assertThat(HodgesLehmann.of(first(2), SIX, 0.5).known()).isEmpty();
    assertThat(ToleranceInterval.of(first(2), 0.9, 0.9).known()).isPresent();
    assertThat(ToleranceInterval.of(first(1), 0.9, 0.9).known()).isEmpty();
    assertThat(first(1).mean().known()).contains(1.0);
    assertThat(first(1).median().known()).contains(1.0);
    assertThat(Sample.of().median().known()).isEmpty();
    assertThat(first(2).sd().known()).isPresent();
    assertThat(first(1).sd().known()).isEmpty();
    assertThat(first(2).meanInterval(0.95).known()).isPresent();
    assertThat(first(3).robustSpread().known()).isPresent();
    assertThat(first(2).robustSpread().known()).isEmpty();
  }

  @Test
  void anIntervalHoldsItsEnds() {
    Interval interval = new Interval(1, 2, 0.95);
    assertThat(interval.contains(1)).isTrue();
    assertThat(interval.contains(2)).isTrue();
    assertThat(interval.contains(Math.nextDown(1.0))).isFalse();
    assertThat(interval.contains(Math.nextUp(2.0))).isFalse();
    refused(() -> new Interval(2, 1, 0.95));
  }

  @Test
  void equivalenceTakesMarginsThatDifferAndIsShownOnItsRisk() {
    MeanShift shift = MeanShift.welch(FIVE, SIX, 0.95).get();
    refused(() -> Equivalence.of(shift, 1, 1));
    Equivalence found = Equivalence.of(shift, -9, 9);
    assertThat(found.shown(found.p())).isTrue();
    assertThat(found.shown(Math.nextDown(found.p()))).isFalse();
  }

  private static Sample first(int n) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = 1 + i * i;
    }
    return Sample.of(values);
  }

  private static Sample twenty() {
    double[] values = new double[20];
    for (int i = 0; i < 20; i++) {
      values[i] = i % 7;
    }
    return Sample.of(values);
  }

  private static void refused(ThrowingCallable doing) {
    assertThatThrownBy(doing).isInstanceOf(IllegalArgumentException.class);
  }
}
