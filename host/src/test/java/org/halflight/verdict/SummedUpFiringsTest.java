package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.halflight.exposure.StopTable;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.Measurand;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.validation.StudiedMethod;
import org.halflight.validation.invented.Draws;
import org.halflight.validation.invented.Hole;
import org.halflight.validation.invented.InventedSession;
import org.halflight.validation.invented.Light;
import org.halflight.validation.invented.Motion;
import org.halflight.validation.invented.Rig;
import org.junit.jupiter.api.Test;

/** What firings of one speed come to together; the shutter is invented. */
class SummedUpFiringsTest {
  private static final MarkedSpeed SPEED = MarkedSpeed.parse("1/60");
  private static final double RAMP_SECONDS = 1e-3;

  /** Firings of a hole whose area grows evenly, on a rig without a fault. */
  private static List<FiringResult> fired(boolean calibrated, double... openSeconds) {
    List<Light> lights = new ArrayList<>();
    for (double open : openSeconds) {
      lights.add(
          Light.plain(
              Hole.EVEN_AREA, Motion.EVEN, Motion.EVEN, RAMP_SECONDS, open, RAMP_SECONDS, 0));
    }
    return StudiedMethod.directly(
            InventedSession.of("1/60", Rig.exact(), calibrated, false, lights, new Draws(1)))
        .firings();
  }

  @Test
  void eachFiringIsCountedForWhatItWas() {
    List<FiringResult> firings = new ArrayList<>(fired(false, 14e-3, 15e-3, 16e-3, 17e-3));
    firings.set(0, firings.get(0).rejected("dial between two clicks"));
    firings.set(1, firings.get(1).damagedBy(Firing.Damage.LINES_LOST));
    SpeedSummary summary = SpeedSummary.of(firings, Tolerance.THIRD);
    assertThat(summary.errors().n()).isEqualTo(2);
    assertThat(summary.rejected()).isEqualTo(1);
    assertThat(summary.unusable()).isEqualTo(1);
    assertThat(summary.tries())
        .isEqualTo(summary.outcomes().values().stream().mapToInt(Integer::intValue).sum());
    assertThat(summary.tries()).isEqualTo(2);
    assertThat(summary.count(Outcome.TIMED)).isEqualTo(2);
  }

  /** A row of the table asks for it some ten times. */
  @Test
  void theBudgetIsDrawnUpOnce() {
    SpeedSummary summary = SpeedSummary.of(fired(false, 14e-3, 15e-3, 16e-3), Tolerance.THIRD);
    assertThat(summary.budget().orElseThrow()).isSameAs(summary.budget().orElseThrow());
    assertThat(SpeedSummary.of(fired(false, 14e-3), Tolerance.THIRD).budget()).isEmpty();
  }

  @Test
  void theMeanIsTheTimeThatLiesTheMeanErrorOff() {
    SpeedSummary summary = SpeedSummary.of(fired(false, 14e-3, 15e-3, 16e-3), Tolerance.THIRD);
    double stops =
        (Math.log(15 / 15.625) + Math.log(16 / 15.625) + Math.log(17 / 15.625)) / Math.log(2) / 3;
    assertThat(summary.meanStops().orElseThrow()).isCloseTo(stops, within(3e-4));
    assertThat(summary.meanSeconds().orElseThrow())
        .isCloseTo(Math.cbrt(15e-3 * 16e-3 * 17e-3), within(4e-6));
    assertThat(summary.expandedIntervalStops().orElseThrow().contains(stops)).isTrue();
    assertThat(summary.robustScatterStops().orElseThrow()).isPositive();
    assertThat(SpeedSummary.of(fired(false, 14e-3), Tolerance.THIRD).expandedIntervalStops())
        .isEmpty();
  }

  @Test
  void calibratedIsOnlyWhatIsCalibratedAsAWhole() {
    List<FiringResult> with = fired(true, 14e-3, 15e-3);
    List<FiringResult> without = fired(false, 14e-3, 15e-3);
    List<FiringResult> mixed = List.of(with.get(0), without.get(1));
    assertThat(SpeedSummary.of(with, Tolerance.THIRD).decisionBasis().rig().isCalibrated())
        .isTrue();
    assertThat(SpeedSummary.of(without, Tolerance.THIRD).decisionBasis().rig().isCalibrated())
        .isFalse();
    assertThat(SpeedSummary.of(mixed, Tolerance.THIRD).decisionBasis().rig().isCalibrated())
        .isFalse();
    assertThat(
            SpeedSummary.of(with, Tolerance.THIRD, DecisionBasis.OF_A_MODEL).decisionBasis().rig())
        .isEqualTo(RigKnowledge.NO_RIG);

    assertThat(CalibrationStatus.of(with).isCalibrated()).isTrue();
    assertThat(CalibrationStatus.of(without).isCalibrated()).isFalse();
    assertThat(CalibrationStatus.of(mixed).isCalibrated()).isFalse();
    assertThat(CalibrationStatus.of(mixed).uses()).hasSize(2);
    assertThat(CalibrationStatus.of(List.of()).isCalibrated()).isFalse();
    for (List<FiringResult> each : List.of(with, List.<FiringResult>of())) {
      assertThat(CalibrationStatus.of(each).rigChecked()).isFalse();
      assertThat(CalibrationStatus.of(each).liveClock()).isFalse();
    }
  }

  @Test
  void anAdjustmentPartsFiringsWhereSomeFollow() {
    List<FiringResult> firings = fired(false, 14e-3, 15e-3, 16e-3);
    assertThat(SinceAdjustment.of(firings, 0)).isEqualTo(firings);
    assertThat(SinceAdjustment.of(firings, 2)).containsExactly(firings.get(2));
    assertThat(SinceAdjustment.of(firings, 3)).isEqualTo(firings);
  }

  /** The whole time is 1 ms longer on each side, the travel 2 ms; of one speed one table. */
  @Test
  void aStopTableIsOfTheMeanTravelOfFiringsThatCount() {
    List<FiringResult> firings = new ArrayList<>(fired(false, 14e-3, 16e-3, 30e-3));
    firings.set(2, firings.get(2).rejected("hung"));
    assertThat(StopTables.of(firings, Phase.AS_FOUND)).isEmpty();
    StopTable table = StopTables.of(firings, Phase.AS_LEFT).get(SPEED);
    assertThat(table.totalSeconds().areaLinear()).isCloseTo(17e-3, within(8e-6));
    assertThat(table.openingPlusClosingSeconds().areaLinear()).isCloseTo(2e-3, within(8e-6));
  }

  @Test
  void aRunSaysHowItIsJudged() {
    RunSetup asLeft =
        new RunSetup("invented", Phase.AS_LEFT, "leaf", List.of(SPEED), Reference.EXACT, 7);
    RunSetup adjusting =
        new RunSetup("invented", Phase.ADJUSTING, "leaf", List.of(SPEED), Reference.EXACT, 7);
    RunSetup open =
        asLeft.withCriteria(
            AcceptanceCriteria.USUAL
                .with(RunOption.ABOUT, Measurand.ONE_EXPOSURE)
                .with(RunOption.UNTIL_DECIDED, true));
    DecisionBasis fixed = DecisionBasis.of(asLeft, RigKnowledge.UNCALIBRATED);
    assertThat(fixed.planned()).isEqualTo(OptionalInt.of(7));
    assertThat(fixed.rule()).isEqualTo(DecisionRule.FIXED_NUMBER);
    assertThat(fixed.measurand()).isEqualTo(Measurand.MEAN_OF_SETTING);
    assertThat(DecisionBasis.of(adjusting, RigKnowledge.UNCALIBRATED).planned()).isEmpty();
    DecisionBasis untilDecided = DecisionBasis.of(open, RigKnowledge.UNCALIBRATED);
    assertThat(untilDecided.planned()).isEmpty();
    assertThat(untilDecided.rule()).isEqualTo(DecisionRule.UNTIL_DECIDED);
    assertThat(untilDecided.measurand()).isEqualTo(Measurand.ONE_EXPOSURE);
  }

  /** At either limit: inside by more than the guard band, beyond it by more, and between. */
  @Test
  void theGuardBandIsKeptAtBothLimits() {
    double guard = at(0).guardStops().orElseThrow();
    double limit = 1 / 3.0;
    assertThat(at(limit - 1.1 * guard).verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(at(limit - 0.9 * guard).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(at(limit + 0.9 * guard).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(at(limit + 1.1 * guard).verdict()).isEqualTo(Verdict.SLOW);
    assertThat(at(1.1 * guard - limit).verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(at(0.9 * guard - limit).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(at(-limit - 0.9 * guard).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(at(-limit - 1.1 * guard).verdict()).isEqualTo(Verdict.FAST);
  }

  private static SpeedSummary at(double mean) {
    return Fired.asLeft().at("1/60", Fired.errors(3, 5, mean, 0.02)).run().speeds().get(0);
  }
}
