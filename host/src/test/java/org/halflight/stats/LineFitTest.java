package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

class LineFitTest {
  private static final Percentage TEN_DIGITS = Percentage.withPercentage(1e-7);

  /** Certified values of the NIST Statistical Reference Datasets, linear regression, Norris. */
  @Test
  void meetsCertifiedValuesOfNorris() {
    LineFit fit =
        LineFit.of(
            Published.column("strd_norris.csv", "x").values(),
            Published.column("strd_norris.csv", "y").values());

    assertThat(fit.n()).isEqualTo(36);
    assertThat(fit.intercept()).isCloseTo(-0.262323073774029, TEN_DIGITS);
    assertThat(fit.interceptSd()).isCloseTo(0.232818234301152, TEN_DIGITS);
    assertThat(fit.slope()).isCloseTo(1.00211681802045, TEN_DIGITS);
    assertThat(fit.slopeSd()).isCloseTo(0.429796848199937E-03, TEN_DIGITS);
    assertThat(fit.residualSd()).isCloseTo(0.884796396144373, TEN_DIGITS);
    assertThat(fit.residualSquares()).isCloseTo(26.6173985294224, TEN_DIGITS);
    assertThat(fit.determination()).isCloseTo(0.999993745883712, TEN_DIGITS);
  }

  /** JCGM 100:2008 (GUM) annex H.3: b = y1 + y2 (t - 20), and the correction at 30 degrees. */
  @Test
  void meetsTheThermometerOfTheGuide() {
    LineFit fit = thermometer();

    assertThat(fit.intercept()).isCloseTo(-0.1712, within(5e-5));
    assertThat(fit.interceptSd()).isCloseTo(0.0029, within(5e-5));
    assertThat(fit.slope()).isCloseTo(0.00218, within(5e-6));
    assertThat(fit.slopeSd()).isCloseTo(0.00067, within(5e-6));
    assertThat(fit.correlation()).isCloseTo(-0.930, within(5e-4));
    assertThat(fit.covariance())
        .isCloseTo(fit.correlation() * fit.interceptSd() * fit.slopeSd(), within(1e-15));
    assertThat(fit.at(10)).isCloseTo(-0.1494, within(5e-5));
    assertThat(fit.sdAt(10)).isCloseTo(0.0041, within(5e-5));
    assertThat(fit.degreesOfFreedom()).isEqualTo(9);
    assertThat(fit.residualSquares()).isCloseTo(0.000110096583109, within(1e-15));
  }

  /**
   * The same with an error of 0.005 degrees that all points share: it does not average down and is
   * added after the fit (figures of the documentation of GTC, MSL New Zealand).
   */
  @Test
  void aCommonErrorIsAddedAfterTheFit() {
    double own = thermometer().interceptSd();
    double common = 0.005;

    assertThat(Math.hypot(own, common)).isCloseTo(0.00576893138292676, within(1e-14));
    assertThat(
            WelchSatterthwaite.degrees(
                new double[] {own, common}, new double[] {9, Double.POSITIVE_INFINITY}))
        .isCloseTo(145.37964721007157, within(1e-8));
  }

  private static LineFit thermometer() {
    double[] t = Published.column("gum_h3_thermometer.csv", "t_k_degC").values();
    for (int i = 0; i < t.length; i++) {
      t[i] -= 20;
    }
    return LineFit.of(t, Published.column("gum_h3_thermometer.csv", "b_k_degC").values());
  }

  @Test
  void theGivenSlopeLeavesTheIntercept() {
    LineFit fit = LineFit.of(new double[] {1, 2, 3, 4}, new double[] {1.1, 2.3, 3.1, 4.3});
    LineFit.FixedSlope fixed = fit.withSlope(1);
    assertThat(fixed.intercept()).isCloseTo(0.2, within(1e-12));
    // By hand: -0.1, 0.1, -0.1, 0.1 around it.
    assertThat(fixed.residualSd()).isCloseTo(Math.sqrt(0.04 / 3), within(1e-12));
    assertThat(fixed.degreesOfFreedom()).isEqualTo(3);
  }

  @Test
  void aSlopeIsTestedAgainstOne() {
    // Student's t by hand: residuals of 0.2 are no reason to doubt 1, a slope of 1.2 is.
    LineFit one = LineFit.of(new double[] {1, 2, 3, 4}, new double[] {1.1, 2.0, 2.9, 4.1});
    LineFit more = LineFit.of(new double[] {1, 2, 3, 4}, new double[] {1.2, 2.41, 3.59, 4.8});
    assertThat(one.slopeP(1)).isGreaterThan(0.5);
    assertThat(more.slopeP(1)).isLessThan(0.01);
  }

  @Test
  void aBendShowsWherePlacesAreRepeated() {
    double[] x = {1, 1, 2, 2, 3, 3, 4, 4};
    double[] bent = {1, 1.1, 4, 4.1, 9, 9.1, 16, 16.1};
    double[] straight = {1, 1.1, 2.1, 2, 3, 3.1, 4.1, 4};
    assertThat(LineFit.of(x, bent).lackOfFitP().get()).isLessThan(1e-4);
    assertThat(LineFit.of(x, straight).lackOfFitP().get()).isGreaterThan(0.5);
    assertThat(LineFit.of(new double[] {1, 2, 3}, new double[] {1, 2, 4}).lackOfFitP().known())
        .isEmpty();
  }

  @Test
  void predictionIsWiderThanTheLine() {
    LineFit fit = thermometer();
    Interval further = fit.prediction(10, 0.95);
    // t(0.975, 9) = 2.2622 (table).
    assertThat((further.high() - further.low()) / 2)
        .isCloseTo(2.2622 * Math.hypot(fit.residualSd(), fit.sdAt(10)), within(1e-6));
  }

  @Test
  void tooFewPointsAreTheCallersMistake() {
    assertThatThrownBy(() -> LineFit.of(new double[] {1, 2}, new double[] {1, 2}))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> LineFit.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
