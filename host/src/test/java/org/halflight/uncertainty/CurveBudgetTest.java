package org.halflight.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.Ramp;
import org.junit.jupiter.api.Test;

/** The budget of a time that light curves decided, against figures worked out by hand. */
class CurveBudgetTest {
  private static final Measured CURVE =
      new Measured(
          8e-3,
          8e-3,
          24e-6,
          4e-6,
          9e-3,
          0.85,
          false,
          OptionalDouble.empty(),
          0,
          Optional.of(new Ramp(1, 0, 1e-3, 0.004, 40)),
          Optional.of(new Ramp(1, 9e-3, 1e-3, 0.003, 40)),
          Optional.empty(),
          0);

  @Test
  void eachRowIsWhatItIsSaidToBe() {
    CurveUncertainty doubt = CurveUncertainty.of(List.of(CURVE, CURVE), 0.01);
    assertThat(doubt.converterSeconds()).isCloseTo(22e-6, within(1e-12));
    assertThat(doubt.fullLightShare()).isCloseTo(0.015, within(1e-12));
    // Half of what was added, and 0.2 % of what total time has more than the effective one.
    assertThat(doubt.windowSeconds()).isCloseTo(4e-6, within(1e-12));
    // The noisier ramp, over 562.5 readings.
    assertThat(doubt.noiseSeconds()).isCloseTo(0.004 * Math.sqrt(9e-3 * 16e-6), within(1e-12));

    UncertaintyBudget budget = CurveBudget.of(8e-3, doubt, RigKnowledge.UNCALIBRATED, 0.02, 4, 0);
    assertThat(budget.rows().stream().map(BudgetRow::part))
        .containsExactly(
            UncertaintySource.LAMP,
            UncertaintySource.FULL_LIGHT,
            UncertaintySource.WINDOW,
            UncertaintySource.NOISE,
            UncertaintySource.QUANTISATION,
            UncertaintySource.CLOCK,
            UncertaintySource.PUPIL,
            UncertaintySource.REPEATABILITY);
    double lamp = 0.01 * 8e-3 / Math.sqrt(3);
    double full = 0.015 * 8e-3 / Math.sqrt(3);
    double scatter = 0.01 * 8e-3 * Math.log(2);
    assertThat(budget.rows().get(0).standardSeconds()).isCloseTo(lamp, within(1e-12));
    assertThat(budget.rows().get(1).standardSeconds()).isCloseTo(full, within(1e-12));
    assertThat(budget.combinedSeconds())
        .isGreaterThan(Math.sqrt(lamp * lamp + full * full + scatter * scatter))
        .isLessThan(1.1 * Math.sqrt(lamp * lamp + full * full + scatter * scatter));
  }

  @Test
  void aFixedLevelPutsTheSupplyInPlaceOfTheLamp() {
    CurveUncertainty doubt = CurveUncertainty.of(List.of(CURVE), 0.005);
    CurveUncertainty followed = doubt.withSupplyFollowed();
    UncertaintyBudget budget =
        CurveBudget.of(8e-3, followed, RigKnowledge.UNCALIBRATED, 0.02, 4, 0);
    assertThat(budget.rows().stream().map(BudgetRow::part))
        .startsWith(UncertaintySource.SUPPLY, UncertaintySource.FULL_LIGHT)
        .doesNotContain(UncertaintySource.LAMP);
    assertThat(budget.rows().get(0).standardSeconds())
        .isCloseTo(0.004 * 8e-3 / Math.sqrt(3), within(1e-12));
    assertThat(budget.combinedSeconds())
        .isLessThan(
            CurveBudget.of(8e-3, doubt, RigKnowledge.UNCALIBRATED, 0.02, 4, 0).combinedSeconds());
  }

  @Test
  void lightScalesAllOfTheTimeSoThatASlowSpeedIsNoSurer() {
    CurveUncertainty doubt = CurveUncertainty.of(List.of(CURVE), 0.005);
    UncertaintyBudget fast = CurveBudget.of(2e-3, doubt, RigKnowledge.UNCALIBRATED, 0, 4, 0);
    UncertaintyBudget slow = CurveBudget.of(0.5, doubt, RigKnowledge.UNCALIBRATED, 0, 4, 0);
    assertThat(slow.combinedStops()).isBetween(0.011, fast.combinedStops());
  }
}
