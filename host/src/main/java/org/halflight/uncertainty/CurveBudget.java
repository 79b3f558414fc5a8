package org.halflight.uncertainty;

import java.util.ArrayList;
import java.util.List;

/**
 * The budget of a mean effective time that light curves decided. The light scales all of it, not
 * the ramps alone as it does with edges; the two-level rule has no part in it.
 */
public final class CurveBudget {
  private CurveBudget() {}

  /**
   * Draws up a budget.
   *
   * @param effectiveSeconds mean effective time
   * @param curve what the curves leave to doubt
   * @param rig what is known of it
   * @param scatterStops standard deviation of the firings
   * @param firings how many, two or more
   * @param outsideBoundSeconds how far off the light outside the main opening may be, plus or minus
   */
  public static UncertaintyBudget of(
      double effectiveSeconds,
      CurveUncertainty curve,
      RigKnowledge rig,
      double scatterStops,
      int firings,
      double outsideBoundSeconds) {
    double t = effectiveSeconds;
    List<BudgetRow> rows = new ArrayList<>();
    if (outsideBoundSeconds > 0) {
      rows.add(
          BudgetRow.of(
              UncertaintySource.REBOUND,
              InputUncertainty.bias(outsideBoundSeconds, Basis.ALLOWANCE),
              1,
              t));
    }
    rows.addAll(
        List.of(
            curve.supplyShare().isPresent()
                ? BudgetRow.of(
                    UncertaintySource.SUPPLY,
                    InputUncertainty.within(curve.supplyShare().getAsDouble(), Basis.ALLOWANCE),
                    t,
                    t)
                : BudgetRow.of(UncertaintySource.LAMP, rig.lamp(), t, t),
            BudgetRow.of(
                UncertaintySource.FULL_LIGHT,
                InputUncertainty.within(curve.fullLightShare(), Basis.SESSION),
                t,
                t),
            BudgetRow.of(
                UncertaintySource.WINDOW,
                InputUncertainty.within(curve.windowSeconds(), Basis.SESSION),
                1,
                t),
            BudgetRow.of(
                UncertaintySource.NOISE,
                InputUncertainty.normal(curve.noiseSeconds(), Basis.SESSION),
                1,
                t),
            BudgetRow.of(
                UncertaintySource.QUANTISATION,
                InputUncertainty.within(curve.converterSeconds(), Basis.ALLOWANCE),
                1,
                t),
            BudgetRow.of(UncertaintySource.CLOCK, rig.clock(), t, t),
            BudgetRow.of(UncertaintySource.PUPIL, rig.pupil(), curve.rampSeconds(), t),
            UncertaintyBudget.repeatability(scatterStops, firings, t)));
    return new UncertaintyBudget(t, rows);
  }
}
