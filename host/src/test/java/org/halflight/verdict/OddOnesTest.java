package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.speeds.Reference;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.Test;

class OddOnesTest {
  private static SpeedSummary of(
      Map<Outcome, Integer> others, OptionalDouble afterRest, double... errors) {
    return Fired.asFound()
        .at("1/60", Reference.EXACT, others, afterRest, errors)
        .run()
        .speeds()
        .get(0);
  }

  private static SpeedSummary of(Outcome other, double... errors) {
    return of(Map.of(other, 1), OptionalDouble.empty(), errors);
  }

  @Test
  void noneSeenIsNotNone() {
    SpeedSummary five = of(Map.of(), OptionalDouble.empty(), 0, 0.1, 0.2, 0.1, 0);
    assertThat(five.oddOnes()).contains(new OddOnes(0, 5));
    assertThat(five.oddOnes().get().upperShare()).isCloseTo(0.451, within(5e-4));
    assertThat(Sentences.speed(five)).contains("Odd ones: 0 of 5, up to 45 % possible.");
    assertThat(of(Map.of(), OptionalDouble.empty()).oddOnes()).isEmpty();
  }

  @Test
  void whatIsFarFromTheMedianIsOddWhereverThatLies() {
    SpeedSummary slow = of(Map.of(), OptionalDouble.empty(), 1, 1.1, 1, 1.2, 1.1);
    assertThat(slow.oddOnes()).contains(new OddOnes(0, 5));
    SpeedSummary wild = of(Map.of(), OptionalDouble.empty(), 1, 1.1, 1, 0.6, 1.1);
    assertThat(wild.oddOnes()).contains(new OddOnes(1, 5));
    assertThat(wild.verdict()).isEqualTo(Verdict.SLOW);
  }

  @Test
  void aReleaseWithoutATimeIsOddAndOneAfterRestIsNot() {
    assertThat(of(Map.of(Outcome.STUCK_OPEN, 2), OptionalDouble.of(1.5), 0, 0.1, 0).oddOnes())
        .contains(new OddOnes(2, 5));
  }

  @Test
  void whatHungOpenedTwiceOrDidNotOpenIsNeverWithin() {
    double[] good = {0.01, 0, 0.02, 0.01, 0};
    assertThat(of(Map.of(), OptionalDouble.empty(), good).verdict()).isEqualTo(Verdict.WITHIN);
    for (Outcome failed : List.of(Outcome.STUCK_OPEN, Outcome.DOUBLE, Outcome.DID_NOT_OPEN)) {
      SpeedSummary speed = of(failed, good);
      assertThat(speed.verdict()).isEqualTo(Verdict.SOME_FAILED);
      assertThat(speed.decision().orElseThrow().verdict()).isEqualTo(Verdict.SOME_FAILED);
      assertThat(Sentences.verdict(speed)).startsWith("not within, 1 of 6 ");
      assertThat(Sentences.speed(speed)).anyMatch(said -> said.contains("is not within tolerance"));
    }
    double[] slow = {0.81, 0.8, 0.82, 0.81, 0.8};
    assertThat(of(Outcome.STUCK_OPEN, slow).verdict()).isEqualTo(Verdict.SLOW);
  }

  @Test
  void severalKindsOfFailureAreCountedTogether() {
    SpeedSummary speed =
        of(Map.of(Outcome.STUCK_OPEN, 1, Outcome.DOUBLE, 2), OptionalDouble.empty(), 0.01, 0, 0.02);
    assertThat(Sentences.verdict(speed)).isEqualTo("not within, 3 of 6 failed");
  }
}
