package org.halflight.shuttermodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.halflight.exposure.LevelPair;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class OpeningLawTest {
  /**
   * Upper node of three-point Gauss-Legendre quadrature on 0 to 1, Abramowitz and Stegun 25.4.30.
   */
  private static final double THREE_POINT_NODE = (1 + Math.sqrt(0.6)) / 2;

  @ParameterizedTest
  @EnumSource(BladeLaw.class)
  void everyLawRisesFromDarkToFullyOpen(BladeLaw law) {
    assertThat(law.openFraction(0)).isZero();
    assertThat(law.openFraction(1)).isEqualTo(1);
    assertThat(law.openFraction(-0.5)).isZero();
    assertThat(law.openFraction(1.5)).isEqualTo(1);
    double before = 0;
    for (int i = 1; i <= 100_000; i++) {
      double open = law.openFraction(i / 100_000.0);
      assertThat(open).isBetween(before, 1.0);
      before = open;
    }
  }

  @Test
  void powersOneAndTwoAreTheTwoSimpleLaws() {
    for (double s : new double[] {0, 0.1, 0.37, 0.9, 1}) {
      assertThat(new PowerLaw(1).openFraction(s)).isEqualTo(BladeLaw.AREA_LINEAR.openFraction(s));
      assertThat(new PowerLaw(2).openFraction(s))
          .isCloseTo(BladeLaw.ROUND_RADIUS_LINEAR.openFraction(s), within(1e-15));
    }
    assertThatThrownBy(() -> new PowerLaw(0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new PowerLaw(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
  }

  /** The area of a regular n-gon in a circle of radius 1 is n/2 sin(2 pi/n) (any geometry book). */
  @Test
  void pentagonWithItsCornersOnThePupilHasTheTextbookArea() {
    assertThat(PentagonHole.clearFraction(Math.cos(Math.PI / 5)))
        .isCloseTo(5.0 / 2 * Math.sin(2 * Math.PI / 5) / Math.PI, within(1e-14));
  }

  /** A hole counted by random points that five straight blades let through, by half-planes. */
  @Test
  void pentagonAgreesWithCountedPoints(@Seed(20261125) long seed) {
    SeededDraws draws = new SeededDraws(seed);
    for (double apothem : new double[] {0.3, 0.7, 0.85, 0.95}) {
      int inPupil = 0;
      int clear = 0;
      while (inPupil < 200_000) {
        double x = 2 * draws.uniform() - 1;
        double y = 2 * draws.uniform() - 1;
        if (x * x + y * y > 1) {
          continue;
        }
        inPupil++;
        boolean through = true;
        for (int blade = 0; blade < 5; blade++) {
          double angle = 2 * Math.PI * blade / 5;
          through &= x * Math.cos(angle) + y * Math.sin(angle) <= apothem;
        }
        clear += through ? 1 : 0;
      }
      double expected = PentagonHole.clearFraction(apothem);
      double standardError = Math.sqrt(expected * (1 - expected) / inPupil);
      assertThat(clear / (double) inPupil)
          .as("seed %d, apothem %s", seed, apothem)
          .isCloseTo(expected, within(4 * standardError));
    }
  }

  /**
   * How wrong the effective start of an opening comes out, in per cent of the opening time, when it
   * is taken from crossings. The figures were computed apart from this code, for the same five
   * shapes, with SciPy's adaptive quadrature and bisection; the first two rows also follow by hand.
   */
  @ParameterizedTest
  @CsvSource({
    "AREA_LINEAR, 0, 0, 0, 0",
    "ROUND_RADIUS_LINEAR, 4.044, -3.421, 0.722, 0.251",
    "FIVE_BLADES_CONSTANT, 3.391, -2.895, 0.329, 0.158",
    "FIVE_BLADES_ACCELERATING, 3.751, -2.914, 0.805, 0.376",
    "FIVE_BLADES_BRAKING, -0.296, 0.036, -0.444, -0.180"
  })
  void effectiveStartFromCrossingsIsWrongByTheComputedShares(
      BladeLaw law, double half, double tenAndNinety, double twoGauss, double threeGauss) {
    double start = effectiveStart(law);
    LevelPair gauss = LevelPair.GAUSS;
    double low3 = 1 - THREE_POINT_NODE;
    assertThat(
            List.of(
                100 * (crossing(law, 0.5) - start),
                100 * ((crossing(law, 0.1) + crossing(law, 0.9)) / 2 - start),
                100 * ((crossing(law, gauss.low()) + crossing(law, gauss.high())) / 2 - start),
                100
                    * ((5 * crossing(law, low3)
                                + 8 * crossing(law, 0.5)
                                + 5 * crossing(law, THREE_POINT_NODE))
                            / 18
                        - start)))
        .usingElementComparator((a, b) -> Math.abs(a - b) < 6e-4 ? 0 : Double.compare(a, b))
        .containsExactly(half, tenAndNinety, twoGauss, threeGauss);
  }

  /** By hand: radius linear has the effective start 1 - 1/3 and crosses half light at 1/sqrt 2. */
  @Test
  void radiusLinearHalfWidthErrorIsTheHandComputedOne() {
    BladeLaw law = BladeLaw.ROUND_RADIUS_LINEAR;
    assertThat(crossing(law, 0.5) - effectiveStart(law))
        .isCloseTo(Math.sqrt(0.5) - 2.0 / 3, within(1e-8));
  }

  private static double effectiveStart(OpeningLaw law) {
    return 1 - new SimpsonIntegrator().integrate(1_000_000, law::openFraction, 0, 1);
  }

  private static double crossing(OpeningLaw law, double level) {
    return new BrentSolver(1e-12).solve(1000, s -> law.openFraction(s) - level, 0, 1);
  }
}
