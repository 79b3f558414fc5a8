package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.halflight.exposure.Exposure.Timed;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class StopTableTest {
  private static Timed timed(LightCurve curve) {
    return (Timed)
        LeafExposureMethod.measure(
            CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, TickRate.BOARD_16_MHZ);
  }

  /** A stop cuts the light of the hole off at its own area: the curve itself, stopped down. */
  private static LightCurve stoppedDown(LightCurve curve, double k) {
    double[] open = curve.open();
    for (int i = 0; i < open.length; i++) {
      open[i] = Math.min(open[i] / (k * k), 1);
    }
    return new LightCurve(curve.seconds(), open);
  }

  @Test
  void predictsTheIntegralOfTheCurveBehindASmallerStop() {
    LightCurve area = CurveEdges.curve(1e-3, 0.5e-3, 1.5e-3, CurveEdges::areaLinear, 1);
    LightCurve round = CurveEdges.curve(1e-3, 0.5e-3, 1.5e-3, CurveEdges::radiusLinear, 1);
    for (double k = 1; k > 0.1; k *= Math.sqrt(0.5)) {
      // The corner where the stop takes over falls between two points of the curve.
      assertThat(timed(area).blades().orElseThrow().stopTable().effectiveSeconds(k).areaLinear())
          .as("k %s", k)
          .isCloseTo(stoppedDown(area, k).integralSeconds(), within(2e-6));
      assertThat(timed(round).blades().orElseThrow().stopTable().effectiveSeconds(k).radiusLinear())
          .as("k %s", k)
          .isCloseTo(stoppedDown(round, k).integralSeconds(), within(2e-6));
    }
  }

  @Test
  void growsTowardsTheTotalTimeWhenStoppedDown() {
    Timed timed = timed(CurveEdges.curve(1e-3, 1e-3, 1e-3, CurveEdges::radiusLinear, 1));
    StopTable table = timed.blades().orElseThrow().stopTable();
    double before = 0;
    for (double fNumber : new double[] {2.8, 4, 5.6, 8, 11, 16, 22}) {
      double seconds = table.effectiveSeconds(2.8, fNumber).radiusLinear();
      assertThat(seconds)
          .isGreaterThan(before)
          .isLessThan(timed.blades().orElseThrow().totalSeconds().radiusLinear());
      before = seconds;
    }
    assertThat(table.effectiveSeconds(1e-6).radiusLinear())
        .isCloseTo(timed.blades().orElseThrow().totalSeconds().radiusLinear(), within(1e-8));
  }

  @Test
  void atTheMeasuredStopItIsTheEffectiveTime() {
    Timed timed = timed(CurveEdges.curve(1e-3, 1e-3, 1e-3, CurveEdges::areaLinear, 1));
    ByLaw table = timed.blades().orElseThrow().stopTable().effectiveSeconds(1);
    assertThat(table.areaLinear()).isCloseTo(timed.effectiveSeconds(), within(1e-9));
    // The radius-linear law mends the error of the rule, so there they differ by it.
    assertThat(Math.abs(table.radiusLinear() - timed.effectiveSeconds()))
        .isLessThanOrEqualTo(timed.methodSeconds() + 1e-9);
  }

  @Test
  void theTwoLawsLieApartTheMoreTheSmallerTheStop() {
    // Ramps of 1 ms with even area, 1 ms open; by hand: opening plus closing is 2.695 ms and total
    // 3.816 ms if the radius grew evenly.
    StopTable table =
        timed(CurveEdges.curve(1e-3, 1e-3, 1e-3, CurveEdges::areaLinear, 1))
            .blades()
            .orElseThrow()
            .stopTable();
    assertThat(1e3 * table.openingPlusClosingSeconds().radiusLinear())
        .isCloseTo(2.695, within(1e-3));
    ByLaw twoStopsDown = table.effectiveSeconds(0.5);
    assertThat(1e3 * twoStopsDown.areaLinear()).isCloseTo(2.75, within(1e-3));
    assertThat(1e3 * twoStopsDown.radiusLinear()).isCloseTo(2.918, within(1e-3));
    assertThat(Stops.between(twoStopsDown.radiusLinear(), twoStopsDown.areaLinear()))
        .isCloseTo(0.0857, within(1e-3));
    ByLaw sixStopsDown = table.effectiveSeconds(0.125);
    assertThat(Stops.between(sixStopsDown.radiusLinear(), sixStopsDown.areaLinear()))
        .isCloseTo(0.267, within(2e-3));
  }

  @Test
  void widerStopsThanTheMeasuredOneAreRefused() {
    StopTable table = new StopTable(new ByLaw(3e-3, 3e-3), new ByLaw(2e-3, 2e-3));
    assertThatIllegalArgumentException().isThrownBy(() -> table.effectiveSeconds(4, 2.8));
    assertThatIllegalArgumentException().isThrownBy(() -> table.effectiveSeconds(0));
  }
}
