package org.halflight.verdict;

import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.UncertaintyBudget;

/**
 * The usual exposure of a setting, its median. The mean is compared with both limits with guard
 * bands (after JCGM 106:2012, clause 8): within where it lies inside both by the guard band,
 * outside where it lies beyond one by as much, and else too close to call. What skewed firings make
 * of their mean is caught by a count of those beyond the limits, from seven firings up.
 *
 * @param meanStops mean error
 * @param budget of that mean
 * @param beyond how many of the firings that it is the mean of lie beyond the limits
 */
record UsualExposure(double meanStops, UncertaintyBudget budget, BeyondLimits beyond)
    implements Decider {
  @Override
  public Decision decide(Tolerance tolerance, DecisionRule rule) {
    int firings = beyond.firings();
    Verdict verdict = verdict(tolerance, rule);
    double conformity =
        budget.chanceBetween(-tolerance.fastStops() - meanStops, tolerance.slowStops() - meanStops);
    return new Decision(
        verdict,
        guardStops(rule),
        conformity,
        Decider.further(verdict, firings, then -> decides(then, tolerance, rule)));
  }

  /** Whether so many firings of this mean and scatter would decide. */
  private boolean decides(int then, Tolerance tolerance, DecisionRule rule) {
    Verdict more = ofTheMean(budget.withFirings(beyond.firings(), then), then, tolerance, rule);
    return more != Verdict.TOO_CLOSE_TO_CALL && beyond.allow(more, then);
  }

  @Override
  public Verdict verdict(Tolerance tolerance, DecisionRule rule) {
    Verdict byMean = ofTheMean(tolerance, rule);
    return beyond.allow(byMean) ? byMean : Verdict.TOO_CLOSE_TO_CALL;
  }

  @Override
  public Verdict ofTheMean(Tolerance tolerance, DecisionRule rule) {
    return ofTheMean(budget, beyond.firings(), tolerance, rule);
  }

  private Verdict ofTheMean(
      UncertaintyBudget its, int firings, Tolerance tolerance, DecisionRule rule) {
    if (!rule.decides(firings)) {
      return Verdict.TOO_CLOSE_TO_CALL;
    }
    double above = its.guardAboveStops(rule.risk(firings));
    double below = its.guardBelowStops(rule.risk(firings));
    if (meanStops - below > tolerance.slowStops()) {
      return Verdict.SLOW;
    }
    if (meanStops + above < -tolerance.fastStops()) {
      return Verdict.FAST;
    }
    return meanStops + above <= tolerance.slowStops() && meanStops - below >= -tolerance.fastStops()
        ? Verdict.WITHIN
        : Verdict.TOO_CLOSE_TO_CALL;
  }

  @Override
  public double guardAboveStops(DecisionRule rule) {
    return budget.guardAboveStops(rule.risk(beyond.firings()));
  }

  @Override
  public double guardBelowStops(DecisionRule rule) {
    return budget.guardBelowStops(rule.risk(beyond.firings()));
  }
}
