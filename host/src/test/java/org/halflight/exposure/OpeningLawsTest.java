package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.halflight.signal.LightCurve;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How well levels stand for the whole curve, for five ways in which a hole opens. The blades are
 * worked out here from plain geometry: a regular pentagon that grows over a round pupil. Errors are
 * of the effective start of opening, in percent of the opening time; the round hole's follow from
 * closed forms, the blades' from numerical integration outside this program.
 */
class OpeningLawsTest {
  private static final double LOW = LevelPair.GAUSS.low();
  private static final double HIGH = LevelPair.GAUSS.high();

  /** Part of the unit disc that a centred regular pentagon of this inradius uncovers. */
  private static double fiveBlades(double inradius) {
    double half = Math.PI / 5;
    if (inradius >= 1) {
      return 1;
    }
    double cut = inradius / Math.cos(half) <= 1 ? half : Math.acos(inradius);
    return 5 * (Math.tan(cut) * inradius * inradius + half - cut) / Math.PI;
  }

  private static DoubleUnaryOperator law(String name) {
    return switch (name) {
      case "area" -> CurveEdges::areaLinear;
      case "round" -> CurveEdges::radiusLinear;
      case "blades" -> OpeningLawsTest::fiveBlades;
      case "blades-accelerating" -> x -> fiveBlades(x * x);
      case "blades-braking" -> x -> fiveBlades(CurveEdges.fastStart(x));
      default -> throw new IllegalArgumentException(name);
    };
  }

  @ParameterizedTest
  @CsvSource({
    "area, 0, 0, 0, 0",
    "round, 4.0, -3.4, 0.7, 0.25",
    "blades, 3.4, -2.9, 0.3, 0.16",
    "blades-accelerating, 3.8, -2.9, 0.8, 0.4",
    "blades-braking, -0.3, 0, -0.4, -0.2"
  })
  void errorOfTheEffectiveStart(
      String name, double half, double tenAndNinety, double two, double three) {
    // Opening and closing of 1 s each, open 1 s: the error of the width is minus twice that of the
    // start.
    LightCurve curve = CurveEdges.curve(1, 1, 1, law(name), 1);
    double exact = curve.integralSeconds();
    double atHalf = curve.secondsAbove(0.5);
    assertThat(-50 * (atHalf - exact)).isCloseTo(half, within(0.051));
    assertThat(-50 * ((curve.secondsAbove(0.1) + curve.secondsAbove(0.9)) / 2 - exact))
        .isCloseTo(tenAndNinety, within(0.051));
    assertThat(
            -50
                * (TwoLevelRule.effectiveSeconds(
                        curve.secondsAbove(LOW), curve.secondsAbove(HIGH), LevelPair.GAUSS)
                    - exact))
        .isCloseTo(two, within(0.051));
    double side = Math.sqrt(0.15);
    double three3 =
        (5 * curve.secondsAbove(0.5 - side) + 8 * atHalf + 5 * curve.secondsAbove(0.5 + side)) / 18;
    assertThat(-50 * (three3 - exact)).isCloseTo(three, within(0.051));
  }
}
