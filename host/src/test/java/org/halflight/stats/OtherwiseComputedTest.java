package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Figures of small made-up data against an independent computation (NumPy and SciPy), where no
 * published example reaches: unlike numbers at a place, many ties, more firings than are counted.
 */
class OtherwiseComputedTest {
  private static final LineFit LINE =
      LineFit.of(new double[] {0, 0, 0, 1, 1, 2, 3}, new double[] {1, 2, 3, 2, 4, 7, 6});

  @Test
  void lackOfFitWithUnlikeNumbersAtThePlaces() {
    assertThat(LINE.slope()).isCloseTo(1.625, within(1e-12));
    assertThat(LINE.intercept()).isCloseTo(1.9464285714285716, within(1e-12));
    assertThat(LINE.residualSquares()).isCloseTo(8.589285714285714, within(1e-12));
    // F = 1.7210 with 2 and 3 degrees of freedom.
    assertThat(LINE.lackOfFitP().get()).isCloseTo(0.31780038056682103, within(1e-12));
    assertThat(LINE.determination()).isCloseTo(0.7109375, within(1e-12));
  }

  @Test
  void lackOfFitWantsThreePlacesAndOneOfThemTwice() {
    double[] y = {1, 3, 2, 5};
    assertThat(LineFit.of(new double[] {0, 1, 2, 2}, y).lackOfFitP().known()).isPresent();
    assertThat(LineFit.of(new double[] {0, 1, 1, 0}, y).lackOfFitP().known()).isEmpty();
    assertThat(LineFit.of(new double[] {0, 1, 2, 3}, y).lackOfFitP().known()).isEmpty();
    assertThat(LineFit.of(new double[] {0, 1, 2, 2}, new double[] {1, 3, 2, 2}).lackOfFitP())
        .isEqualTo(new Figure.NoScatter<Double>());
  }

  @Test
  void aGivenSlopeLeavesTheMeanAndItsScatter() {
    LineFit.FixedSlope fixed = LINE.withSlope(1.5);
    assertThat(fixed.intercept()).isCloseTo(2.0714285714285716, within(1e-12));
    assertThat(fixed.residualSd()).isCloseTo(1.2051476890327395, within(1e-12));
    assertThat(fixed.interceptSd()).isCloseTo(0.4555030111835474, within(1e-12));
    assertThat(fixed.degreesOfFreedom()).isEqualTo(6);
  }

  /** Points on a line leave no doubt of its slope. */
  @Test
  void aLineWithoutScatterIsSureOfItsSlope() {
    LineFit exact = LineFit.of(new double[] {0, 1, 2}, new double[] {1, 3, 5});
    assertThat(exact.slopeP(2)).isEqualTo(1);
    assertThat(exact.slopeP(1)).isZero();
  }

  /** 31 against 32 with many ties, by the normal approximation with half a step. */
  @Test
  void rankTestOfManyTies() {
    Sample before = Sample.of(IntStream.range(0, 31).mapToDouble(k -> k % 7).toArray());
    Sample after =
        Sample.of(IntStream.range(0, 32).mapToDouble(k -> k % 7 + (k % 3 == 0 ? 1 : 0)).toArray());
    RankTest test = RankTest.of(before, after).get();
    assertThat(test.exact()).isFalse();
    assertThat(test.w()).isEqualTo(541.5);
    assertThat(test.pBelow()).isCloseTo(0.738463352331119, within(1e-12));
    assertThat(test.pAbove()).isCloseTo(0.2660734002624151, within(1e-12));
  }

  /** The 353rd of 992 differences from either end bounds the 95 % interval. */
  @Test
  void hodgesAndLehmannOfMoreFiringsThanAreCounted() {
    Sample before = Sample.of(IntStream.range(0, 31).mapToDouble(k -> k).toArray());
    Sample after = Sample.of(IntStream.range(0, 32).mapToDouble(k -> 4.5 * Math.sqrt(k)).toArray());
    HodgesLehmann shift = HodgesLehmann.of(before, after, 0.95).get();
    assertThat(shift.shift()).isCloseTo(1.5848495615135656, within(1e-12));
    assertThat(shift.interval().low()).isCloseTo(-2.954592314951398, within(1e-12));
    assertThat(shift.interval().high()).isCloseTo(6.224980739587952, within(1e-12));
  }

  /** With 60 firings in all the ranks are counted still, and the level is what it comes to. */
  @Test
  void hodgesAndLehmannCountUpToSixty() {
    Sample thirty = Sample.of(IntStream.range(0, 30).mapToDouble(k -> k * k).toArray());
    assertThat(HodgesLehmann.of(thirty, thirty, 0.95).get().interval().level())
        .isGreaterThan(0.95)
        .isLessThan(0.953);
  }

  /** The 757th of 1830 slopes from either end, by Kendall's normal approximation. */
  @Test
  void theilAndSenOfMoreFiringsThanAreCounted() {
    TheilSen line =
        TheilSen.ofOrder(
                Sample.of(
                    IntStream.range(0, 61)
                        .mapToDouble(k -> k * k * 7 % 61 * 0.37 + 0.05 * k)
                        .toArray()),
                0.95)
            .get();
    assertThat(line.slope()).isCloseTo(0.06663131313131312, within(1e-12));
    assertThat(line.slopeInterval().low()).isCloseTo(-0.035384615384615584, within(1e-12));
    assertThat(line.slopeInterval().high()).isCloseTo(0.17758620689655175, within(1e-12));
  }

  /** Two of ten pairs stand wrong: 1 + 4 + 9 of 120 orders have no more. */
  @Test
  void mannAndKendallBothSides() {
    MannKendall test = MannKendall.of(Sample.of(1, 3, 2, 5, 4)).get();
    assertThat(test.s()).isEqualTo(6);
    assertThat(test.pRising()).isCloseTo(14 / 120.0, within(1e-12));
    assertThat(test.p()).isCloseTo(28 / 120.0, within(1e-12));
    assertThat(MannKendall.of(Sample.of(3, 4, 1, 5, 2)).get().p()).isEqualTo(1);
  }
}
