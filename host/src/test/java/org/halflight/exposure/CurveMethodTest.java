package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.CurveExposure.Reason;
import org.halflight.exposure.CurveExposure.Refused;
import org.halflight.fixtures.Seed;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.CurveSampler;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.LightCurve;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Sampled curves of light whose integral is known exactly. Simulated; no rig and no shutter. */
class CurveMethodTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private static Measured measure(LightCurve curve, long seed) {
    return (Measured)
        CurveMethod.measure(SampledCurves.of(curve, seed), SampledCurves.LEVELS, RATE);
  }

  private static LightCurve curve(double openSeconds, DoubleUnaryOperator ramp, double peak) {
    return CurveEdges.curve(1e-3, openSeconds, 1.3e-3, ramp, peak);
  }

  @ParameterizedTest
  @EnumSource(BladeLaw.class)
  void theIntegralIsThatOfTheLightForShortAndLongOpenings(BladeLaw law, @Seed(1) long first) {
    for (double open : new double[] {0, 0.5e-3, 1e-3, 15e-3, 0.25, 1}) {
      for (long seed = first; seed < first + 5; seed++) {
        LightCurve curve = curve(open, law::openFraction, 1);
        Measured measured = measure(curve, seed);
        double exact = curve.integralSeconds();
        assertThat(measured.effectiveSeconds())
            .as("%s open %s s, seed %s", law, open, seed)
            .isCloseTo(exact, within(measured.toleranceSeconds()))
            .isCloseTo(exact, within(0.003 * exact));
        assertThat(measured.openedFully()).isTrue();
      }
    }
  }

  @Test
  void theLawOfTheRampsComesOut(@Seed(1) long first) {
    for (long seed = first; seed < first + 20; seed++) {
      for (double open : new double[] {0.5e-3, 15e-3}) {
        Measured area = measure(curve(open, BladeLaw.AREA_LINEAR::openFraction, 1), seed);
        Measured round = measure(curve(open, BladeLaw.ROUND_RADIUS_LINEAR::openFraction, 1), seed);
        assertThat(area.opening().get().power()).as("seed %s", seed).isCloseTo(1, within(0.15));
        assertThat(area.closing().get().power()).as("seed %s", seed).isCloseTo(1, within(0.15));
        assertThat(round.opening().get().power()).as("seed %s", seed).isCloseTo(2, within(0.15));
        assertThat(round.closing().get().power()).as("seed %s", seed).isCloseTo(2, within(0.15));
        assertThat(round.opening().get().seconds()).isCloseTo(1e-3, within(0.05e-3));
        assertThat(round.closing().get().seconds()).isCloseTo(1.3e-3, within(0.065e-3));
        assertThat(round.totalSeconds()).isCloseTo(2.3e-3 + open, within(0.08e-3));
        assertThat(area.totalSeconds()).isCloseTo(2.3e-3 + open, within(0.03e-3));
      }
    }
  }

  /** A stop cuts the light of the hole off at its own area: the integral behind it. */
  private static double behindStop(LightCurve curve, double k) {
    double[] open = curve.open();
    for (int i = 0; i < open.length; i++) {
      open[i] = Math.min(open[i] / (k * k), 1);
    }
    return new LightCurve(curve.seconds(), open).integralSeconds();
  }

  @Test
  void theStopTableIsWithinATwentiethOfAStopWhereTwoLevelsAreNot(@Seed(1) long first) {
    double worst = 0;
    double worstOfTwoLevels = 0;
    for (BladeLaw law : BladeLaw.values()) {
      LightCurve curve = curve(0.85e-3, law::openFraction, 1);
      Exposure.Timed edges =
          (Exposure.Timed)
              LeafExposureMethod.measure(
                  CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, RATE);
      for (double fNumber : new double[] {4, 5.6, 8, 11, 16, 22}) {
        double truth = behindStop(curve, 2.8 / fNumber);
        ByLaw byEdges = edges.blades().orElseThrow().stopTable().effectiveSeconds(2.8, fNumber);
        worstOfTwoLevels =
            Math.max(
                worstOfTwoLevels,
                Math.max(
                    Math.abs(Stops.between(byEdges.least(), truth)),
                    Math.abs(Stops.between(byEdges.greatest(), truth))));
        for (long seed = first; seed < first + 5; seed++) {
          double seconds = measure(curve, seed).stopTable().get().effectiveSeconds(2.8, fNumber);
          double off = Math.abs(Stops.between(seconds, truth));
          if (off > 0.03)
            System.out.println(law + " f/" + fNumber + " " + off + measure(curve, seed));
          worst = Math.max(worst, off);
        }
      }
    }
    assertThat(worst).isLessThan(0.035);
    assertThat(worstOfTwoLevels).isGreaterThan(0.2);
  }

  @Test
  void trianglesThatTurnRoundBelowFullLightHaveTheirRightTime(@Seed(1) long first) {
    for (BladeLaw law : new BladeLaw[] {BladeLaw.AREA_LINEAR, BladeLaw.ROUND_RADIUS_LINEAR}) {
      for (double peak : new double[] {0.8, 0.5}) {
        for (long seed = first; seed < first + 5; seed++) {
          LightCurve curve = CurveEdges.curve(2e-3, 0, 1.5e-3, law::openFraction, peak);
          Measured measured = measure(curve, seed);
          double exact = curve.integralSeconds();
          assertThat(measured.openedFully()).isFalse();
          assertThat(measured.peak()).isCloseTo(peak, within(0.02));
          assertThat(measured.stopTable()).isEmpty();
          assertThat(measured.effectiveSeconds())
              .as("%s to %s, seed %s", law, peak, seed)
              .isCloseTo(exact, within(measured.toleranceSeconds()))
              .isCloseTo(exact, within(0.005 * exact));
        }
      }
    }
  }

  @Test
  void leavesThatStopShortAboveTheHighLevelAndStayThereAreFound() {
    LightCurve curve =
        new LightCurve(new double[] {0.001, 0.002, 0.018, 0.019}, new double[] {0, 0.9, 0.9, 0});
    Measured measured = measure(curve, 1);
    assertThat(measured.openedFully()).isFalse();
    assertThat(measured.plateauLight().getAsDouble()).isCloseTo(0.9, within(0.003));
    assertThat(measured.effectiveSeconds())
        .isCloseTo(curve.integralSeconds(), within(0.003 * curve.integralSeconds()));
    // Two levels alone take it for a full opening.
    assertThat(
            LeafExposureMethod.measure(
                CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, RATE))
        .isInstanceOf(Exposure.Timed.class);
  }

  @Test
  void halfLightPointsAreThoseOfTheLight() {
    Measured measured = measure(curve(1e-3, BladeLaw.ROUND_RADIUS_LINEAR::openFraction, 1), 3);
    // sqrt(1/2) of each ramp from the dark: 1 + 0.293 * 2.3 ms.
    assertThat(measured.halfWidthSeconds().getAsDouble())
        .isCloseTo(1e-3 + (1 - Math.sqrt(0.5)) * 2.3e-3, within(8e-6));
    Measured low = measure(curve(0, BladeLaw.AREA_LINEAR::openFraction, 0.4), 3);
    assertThat(low.halfLight()).isEmpty();
  }

  @Test
  void bounceIsLightBesideTheMainOpeningAndPartOfTheExposure() {
    double[] seconds = {0, 1e-3, 2e-3, 3e-3, 3.2e-3, 3.4e-3, 3.6e-3};
    LightCurve curve = new LightCurve(seconds, new double[] {0, 1, 1, 0, 0, 0.3, 0}).shifted(1e-3);
    Measured measured = measure(curve, 2);
    assertThat(measured.mainSeconds()).isCloseTo(2e-3, within(6e-6));
    assertThat(measured.effectiveSeconds()).isCloseTo(2.06e-3, within(8e-6));
    assertThat(measured.otherLightShare()).isCloseTo(0.03, within(0.002));
  }

  @Test
  void aSlowRampThatBeginsBeforeTheFirstReadingIsAddedByItsLaw() {
    // 5 ms to the trigger of a round hole, and 0.77 ms of readings before it.
    LightCurve curve =
        CurveEdges.curve(5e-3, 10e-3, 2e-3, BladeLaw.ROUND_RADIUS_LINEAR::openFraction, 1);
    Measured measured = measure(curve, 4);
    assertThat(measured.addedSeconds()).isBetween(30e-6, 200e-6);
    assertThat(measured.effectiveSeconds())
        .isCloseTo(curve.integralSeconds(), within(0.003 * curve.integralSeconds()));
  }

  private static CurveExposure remade(List<Part> parts, boolean cutOff) {
    return CurveMethod.measure(new SampledLight(parts, cutOff), SampledCurves.LEVELS, RATE);
  }

  @Test
  void whatIsNotWholeIsRefusedWithItsReason() {
    SampledLight whole =
        SampledCurves.of(curve(20e-3, BladeLaw.ROUND_RADIUS_LINEAR::openFraction, 1), 1);
    List<Part> parts = whole.parts();
    assertThat(parts).hasSize(3);
    assertThat(remade(parts, false)).isInstanceOf(Measured.class);
    assertThat(remade(parts, true)).isEqualTo(new Refused(Reason.CUT_OFF));
    assertThat(remade(List.of(parts.get(0), parts.get(2)), false))
        .isEqualTo(new Refused(Reason.PARTS_MISSING));
    Part closing = parts.get(2);
    Part afterGap =
        new Part(Kind.CLOSING, closing.firstTicks(), closing.periodTicks(), closing.values(), true);
    assertThat(remade(List.of(parts.get(0), parts.get(1), afterGap), false))
        .isEqualTo(new Refused(Reason.PARTS_MISSING));
    assertThat(remade(List.of(changed(parts.get(0), 60, -1), parts.get(1), closing), false))
        .isEqualTo(new Refused(Reason.VALUES_LOST));
    assertThat(remade(List.of(changed(parts.get(0), 200, 255), parts.get(1), closing), false))
        .isEqualTo(new Refused(Reason.SATURATED));
    assertThat(remade(List.of(closing), false)).isEqualTo(new Refused(Reason.BEGINS_IN_LIGHT));
    assertThat(remade(List.of(parts.get(0)), false)).isEqualTo(new Refused(Reason.ENDS_IN_LIGHT));
    assertThat(remade(List.of(new Part(Kind.OPENING, 0, 256, List.of(2, 2, 2), false)), false))
        .isEqualTo(new Refused(Reason.NO_LIGHT));
    assertThat(CurveMethod.measure(whole, SampledCurves.LEVELS.withFull(740), RATE))
        .isEqualTo(new Refused(Reason.BRIGHTER_THAN_FULL));
    assertThat(CurveMethod.measure(whole, new LightLevels(8, 1010, 200, 600), RATE))
        .isEqualTo(new Refused(Reason.LIGHT_NOT_KNOWN));
  }

  private static Part changed(Part part, int at, int value) {
    List<Integer> values = new ArrayList<>(part.values());
    values.set(at, value);
    return new Part(part.kind(), part.firstTicks(), part.periodTicks(), values, false);
  }

  @Test
  void lightLongAfterTheClosingIsNoPartOfTheExposure() {
    double[] seconds = {0, 1e-3, 2e-3, 3e-3, 3.2e-3, 3.4e-3, 3.6e-3, 15e-3, 15.2e-3, 15.4e-3};
    double[] open = {0, 1, 1, 0, 0, 0.3, 0, 0, 0.3, 0};
    SampledLight sampled =
        new CurveSampler(48, 1100, 48, 128)
            .sample(
                SampledCurves.SENSOR,
                LightPath.of(new LightCurve(seconds, open).shifted(1e-3)),
                16_000_000,
                877,
                new SeededDraws(2));
    Measured measured = (Measured) CurveMethod.measure(sampled, SampledCurves.LEVELS, RATE);
    assertThat(measured.effectiveSeconds()).isCloseTo(2.06e-3, within(8e-6));
  }
}
