package org.halflight.uncertainty;

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
   */
  public static UncertaintyBudget of(
      double effectiveSeconds,
      CurveDoubt curve,
      RigKnowledge rig,
      double scatterStops,
      int firings) {
    double t = effectiveSeconds;
    return new UncertaintyBudget(
        t,
        List.of(
            BudgetRow.of(Part.LAMP, rig.lamp(), t, t),
            BudgetRow.of(
                Part.FULL_LIGHT, Doubt.within(curve.fullLightShare(), Basis.SESSION), t, t),
            BudgetRow.of(Part.WINDOW, Doubt.within(curve.windowSeconds(), Basis.SESSION), 1, t),
            BudgetRow.of(Part.NOISE, Doubt.normal(curve.noiseSeconds(), Basis.SESSION), 1, t),
            BudgetRow.of(
                Part.QUANTISATION, Doubt.within(curve.converterSeconds(), Basis.ALLOWANCE), 1, t),
            BudgetRow.of(Part.CLOCK, rig.clock(), t, t),
            UncertaintyBudget.repeatability(scatterStops, firings, t)));
  }
}
