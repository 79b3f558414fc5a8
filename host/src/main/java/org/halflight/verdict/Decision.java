package org.halflight.verdict;

import java.util.Objects;
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
 * @param placement what is decided
 * @param guardStops the guard band at each limit
 * @param conformity the chance that what is decided on lies within tolerance, by what is known
 * @param furtherFirings how many more firings of this scatter would decide, if their number is
 *     fixed now and the mean stays; how many are missing where fewer were fired than planned; 0
 *     where it is decided, empty where no number up to {@link #MOST} would
 */
public record Decision(
    Placement placement, double guardStops, double conformity, OptionalInt furtherFirings) {
  /** More firings at one speed than this are not proposed. */
  public static final int MOST = 100;

  public Decision {
    Objects.requireNonNull(placement);
    Objects.requireNonNull(furtherFirings);
  }

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
    Placement placement = placement(meanStops, budget, beyond, tolerance, rule);
    double conformity =
        budget.chanceBelow(tolerance.slowStops() - meanStops)
            - budget.chanceBelow(-tolerance.fastStops() - meanStops);
    OptionalInt further = OptionalInt.of(0);
    if (placement == Placement.TOO_CLOSE_TO_CALL) {
      further = OptionalInt.empty();
      for (int more = 1; firings + more <= MOST && further.isEmpty(); more++) {
        int then = firings + more;
        Placement placed =
            ofTheMean(meanStops, budget.withFirings(firings, then), then, tolerance, rule);
        if (placed != Placement.TOO_CLOSE_TO_CALL && beyond.allow(placed, then)) {
          further = OptionalInt.of(more);
        }
      }
    }
    return new Decision(placement, budget.guardStops(rule.risk(firings)), conformity, further);
  }

  /** The decision alone. */
  static Placement placement(
      double meanStops,
      UncertaintyBudget budget,
      BeyondLimits beyond,
      Tolerance tolerance,
      DecisionRule rule) {
    Placement placed = ofTheMean(meanStops, budget, beyond.firings(), tolerance, rule);
    return beyond.allow(placed) ? placed : Placement.TOO_CLOSE_TO_CALL;
  }

  /** What the mean says by itself. */
  static Placement ofTheMean(
      double meanStops,
      UncertaintyBudget budget,
      int firings,
      Tolerance tolerance,
      DecisionRule rule) {
    if (!rule.decides(firings)) {
      return Placement.TOO_CLOSE_TO_CALL;
    }
    double guard = budget.guardStops(rule.risk(firings));
    if (meanStops - guard > tolerance.slowStops()) {
      return Placement.SLOW;
    }
    if (meanStops + guard < -tolerance.fastStops()) {
      return Placement.FAST;
    }
    return meanStops + guard <= tolerance.slowStops() && meanStops - guard >= -tolerance.fastStops()
        ? Placement.WITHIN
        : Placement.TOO_CLOSE_TO_CALL;
  }
}
