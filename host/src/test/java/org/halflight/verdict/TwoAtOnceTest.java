package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.verdict.TwoAtOnce.Change;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TwoAtOnceTest {
  private static final TwoSpeeds TWO =
      new TwoSpeeds(MarkedSpeed.parse("1"), MarkedSpeed.parse("1/15"));
  private static final int RUNS = 20_000;

  private static TwoAtOnce of(List<Sample> one, List<Sample> other) {
    return TwoAtOnce.of(TWO, one, other, false, false);
  }

  @Test
  void workedExample() {
    // 1 s: 0.60 and 0.64, then 0.30 and 0.32. Squares around the means: 0.0008 + 0.0002 with two
    // degrees of freedom, 0.0005. 1/15: -0.02 and 0.02, then 0.00 and 0.04: 0.0016 with two,
    // 0.0008.
    // Together 0.00065 with four: s 0.0255, t 2.776, of two against two 0.0708.
    TwoAtOnce two =
        of(
            List.of(Sample.of(0.60, 0.64), Sample.of(0.30, 0.32)),
            List.of(Sample.of(-0.02, 0.02), Sample.of(0.00, 0.04)));
    assertThat(two.first().change()).isEqualTo(Change.CLOSER);
    assertThat(two.first().errorStops().orElseThrow()).isCloseTo(0.31, within(1e-12));
    assertThat(two.first().beforeStops().orElseThrow()).isCloseTo(0.62, within(1e-12));
    assertThat(two.first().plusMinusStops().orElseThrow())
        .isCloseTo(2.776445 * Math.sqrt(0.00065 / 2), within(1e-6));
    // By itself it scatters more than both together: t 4.303 of two degrees.
    assertThat(two.second().plusMinusStops().orElseThrow())
        .isCloseTo(4.302653 * Math.sqrt(0.0008 / 2), within(1e-6));
    assertThat(two.second().change()).isEqualTo(Change.NO_CHANGE);
    assertThat(two.isFired()).isTrue();
  }

  @Test
  void furtherAndAcross() {
    TwoAtOnce two =
        of(
            List.of(Sample.of(0.10, 0.12), Sample.of(0.50, 0.52)),
            List.of(Sample.of(0.30, 0.32), Sample.of(-0.32, -0.30)));
    assertThat(two.first().change()).isEqualTo(Change.FURTHER);
    assertThat(two.second().change()).isEqualTo(Change.ACROSS);
  }

  @Test
  void nothingIsSaidWithoutFiringsOnBothSides() {
    TwoAtOnce first = of(List.of(Sample.of(0.6, 0.62)), List.of(Sample.of(0.1)));
    assertThat(first.first().change()).isEqualTo(Change.NOT_YET);
    assertThat(first.second().isFired()).isFalse();
    TwoAtOnce one =
        of(
            List.of(Sample.of(0.6, 0.62), Sample.of(0.3)),
            List.of(Sample.of(), Sample.of(0.3, 0.3)));
    assertThat(one.first().change()).as("one firing since").isEqualTo(Change.NOT_YET);
    assertThat(one.second().change()).as("none before").isEqualTo(Change.NOT_YET);
  }

  @Test
  void adjustmentWithoutFiringsInBetweenIsPassedOver() {
    TwoAtOnce two =
        of(
            List.of(Sample.of(0.60, 0.62), Sample.of(), Sample.of(0.30, 0.32)),
            List.of(Sample.of(0.1, 0.1), Sample.of(), Sample.of(0.1, 0.1)));
    assertThat(two.first().change()).isEqualTo(Change.CLOSER);
  }

  @Test
  void firingsThatHappenToAgreeProveNothing() {
    TwoAtOnce two =
        of(
            List.of(Sample.of(0.60, 0.60), Sample.of(0.58, 0.58)),
            List.of(Sample.of(0.1, 0.1), Sample.of(0.1, 0.1)));
    assertThat(two.first().change()).isEqualTo(Change.NO_CHANGE);
  }

  @Test
  void enoughIsBothWithin() {
    List<Sample> any = List.of(Sample.of(0.1, 0.1));
    assertThat(TwoAtOnce.of(TWO, any, any, true, false).isEnough()).isFalse();
    assertThat(TwoAtOnce.of(TWO, any, any, true, true).isEnough()).isTrue();
  }

  /** Nothing was changed, and the two speeds scatter alike or not: 5 % of words at the most. */
  @ParameterizedTest
  @CsvSource({"0.03, 0.03", "0.03, 0.1", "0.1, 0.03", "0.15, 0.15", "0.02, 0.3"})
  void wordsWithoutAChangeAreRare(double sd, double sdOfOther) {
    SplittableRandom random = new SplittableRandom(17);
    int words = 0;
    int sides = 0;
    for (int i = 0; i < RUNS; i++) {
      TwoAtOnce two =
          of(
              List.of(two(random, 0.6, sd), two(random, 0.6, sd)),
              List.of(two(random, 0.2, sdOfOther), two(random, 0.2, sdOfOther)));
      for (TwoAtOnce.Side side : List.of(two.first(), two.second())) {
        sides++;
        words += side.change() == Change.NO_CHANGE ? 0 : 1;
      }
    }
    assertThat((double) words / sides).isLessThan(0.05);
  }

  /** A step of a third of a stop is seen with the scatter of a sound shutter. */
  @Test
  void stepWorthMakingIsSeen() {
    SplittableRandom random = new SplittableRandom(18);
    int seen = 0;
    for (int i = 0; i < RUNS; i++) {
      TwoAtOnce two =
          of(
              List.of(two(random, 0.6, 0.05), two(random, 0.3, 0.05)),
              List.of(two(random, 0.2, 0.05), two(random, 0.2, 0.05)));
      seen += two.first().change() == Change.CLOSER ? 1 : 0;
    }
    assertThat((double) seen / RUNS).isGreaterThan(0.85);
  }

  private static Sample two(SplittableRandom random, double mean, double sd) {
    return Sample.of(mean + sd * random.nextGaussian(), mean + sd * random.nextGaussian());
  }
}
