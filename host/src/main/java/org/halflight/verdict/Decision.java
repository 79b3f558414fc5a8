package org.halflight.verdict;

import java.util.OptionalInt;
import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.UncertaintyBudget;

/**
 * The decision on the usual exposure of a setting, its median, against its tolerance. The mean is
 * held against both limits with guard bands (after JCGM 106:2012, clause 8): within where it lies
 * inside both by the guard band, outside where it lies beyond one by as much, and else too close to
 * call. What skewed firings make of their mean is caught by a count of those beyond the limits,
 * {@link BeyondLimits}, from seven firings up.
 *
 * @param verdict what is decided
 * @param guardStops the guard band at each limit, the wider one where they differ
 * @param conformity the chance that what is decided on lies within tolerance, by what is known; at
 *     least this, wherever the biases of the rig lie
 * @param furtherFirings how many more firings of this scatter would decide, if their number is
 *     fixed now and the mean stays; how many are missing where fewer were fired than planned; 0
 *     where it is decided, empty where no number up to {@link #MOST} would
 */
public record Decision(
    Verdict verdict, double guardStops, double conformity, OptionalInt furtherFirings) {
  /** More firings at one speed than this are not proposed. */
  public static final int MOST = 100;

  /**
   * Decides.
   *
   * @param meanStops mean error
   * @param budget of that mean
   * @param beyond how many of the firings that it is the mean of lie beyond the limits
   */
  public static Decision of(
      double meanStops,
      UncertaintyBudget budget,
      BeyondLimits beyond,
      Tolerance tolerance,
      DecisionRule rule) {
    int firings = beyond.firings();
    Verdict verdict = verdict(meanStops, budget, beyond, tolerance, rule);
    double conformity =
        budget.chanceBetween(-tolerance.fastStops() - meanStops, tolerance.slowStops() - meanStops);
    OptionalInt further = OptionalInt.of(0);
    if (verdict == Verdict.TOO_CLOSE_TO_CALL) {
      further = OptionalInt.empty();
      for (int more = 1; firings + more <= MOST && further.isEmpty(); more++) {
        int then = firings + more;
        Verdict placed =
            ofTheMean(meanStops, budget.withFirings(firings, then), then, tolerance, rule);
        if (placed != Verdict.TOO_CLOSE_TO_CALL && beyond.allow(placed, then)) {
          further = OptionalInt.of(more);
        }
      }
    }
    return new Decision(verdict, budget.guardStops(rule.risk(firings)), conformity, further);
  }

  /** The decision alone. */
  static Verdict verdict(
      double meanStops,
      UncertaintyBudget budget,
      BeyondLimits beyond,
      Tolerance tolerance,
      DecisionRule rule) {
    Verdict placed = ofTheMean(meanStops, budget, beyond.firings(), tolerance, rule);
    return beyond.allow(placed) ? placed : Verdict.TOO_CLOSE_TO_CALL;
  }

  /** What the mean says by itself. */
  static Verdict ofTheMean(
      double meanStops,
      UncertaintyBudget budget,
      int firings,
      Tolerance tolerance,
      DecisionRule rule) {
    if (!rule.decides(firings)) {
      return Verdict.TOO_CLOSE_TO_CALL;
    }
    double above = budget.guardAboveStops(rule.risk(firings));
    double below = budget.guardBelowStops(rule.risk(firings));
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
}
