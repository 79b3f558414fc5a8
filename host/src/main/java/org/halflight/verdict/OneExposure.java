package org.halflight.verdict;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Student;
import org.halflight.stats.ToleranceFactor;
import org.halflight.stats.WelchSatterthwaite;
import org.halflight.uncertainty.UncertaintyBudget;

/**
 * The decision on single exposures of a setting, for normally distributed firings. Within where
 * {@link SpeedStatistics#CONTENT} of them are shown to lie inside the limits, by a tolerance
 * interval (ISO 16269-6) widened by what the rig may be off by; outside where more of them than the
 * rest are shown to lie beyond one limit; else too close to call.
 *
 * @param meanStops of the firings
 * @param sdStops of one firing
 * @param firings two or more
 * @param commonStops standard uncertainty of all that is the same for every firing, biases left out
 * @param shortStops by what biases may make the firings read short, at most
 * @param longStops by what biases may make them read long, at most
 */
record OneExposure(
    double meanStops,
    double sdStops,
    int firings,
    double commonStops,
    double shortStops,
    double longStops)
    implements Decider {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final double CONTENT = SpeedStatistics.CONTENT;

  /** The exact factor takes some milliseconds, and is asked for at every look. */
  private static final Map<Asked, Double> FACTORS = new ConcurrentHashMap<>();

  private record Asked(int firings, double confidence) {}

  /** Without a bias. */
  OneExposure(double meanStops, double sdStops, int firings, double commonStops) {
    this(meanStops, sdStops, firings, commonStops, 0, 0);
  }

  /** As a budget says. */
  static OneExposure of(double meanStops, double sdStops, int firings, UncertaintyBudget budget) {
    return new OneExposure(
        meanStops,
        sdStops,
        firings,
        budget.commonStops(),
        budget.readsShortStops(),
        budget.readsLongStops());
  }

  @Override
  public Decision decide(Tolerance tolerance, DecisionRule rule) {
    Verdict verdict = verdict(tolerance, rule);
    return new Decision(
        verdict,
        guardStops(rule),
        conformity(tolerance),
        Decider.further(verdict, firings, then -> decides(then, tolerance, rule)));
  }

  /** Whether so many firings of this mean and scatter would decide. */
  private boolean decides(int then, Tolerance tolerance, DecisionRule rule) {
    OneExposure more =
        new OneExposure(meanStops, sdStops, then, commonStops, shortStops, longStops);
    // Howe's factor is quick and within 1 %, so the exact one is asked for a few times only.
    double half =
        more.half(
            ToleranceFactor.twoSidedHowe(then, CONTENT, 1 - rule.risk(then)), rule.risk(then));
    return more.verdict(tolerance, rule, half) != Verdict.TOO_CLOSE_TO_CALL
        && more.verdict(tolerance, rule) != Verdict.TOO_CLOSE_TO_CALL;
  }

  @Override
  public Verdict verdict(Tolerance tolerance, DecisionRule rule) {
    return verdict(tolerance, rule, widest(rule.risk(firings)));
  }

  @Override
  public double guardBelowStops(DecisionRule rule) {
    return widest(rule.risk(firings)) + longStops;
  }

  @Override
  public double guardAboveStops(DecisionRule rule) {
    return widest(rule.risk(firings)) + shortStops;
  }

  /**
   * The chance that the next exposure lies within tolerance; at least this, whatever the biases.
   */
  private double conformity(Tolerance tolerance) {
    return Math.min(conformity(tolerance, shortStops), conformity(tolerance, -longStops));
  }

  private double conformity(Tolerance tolerance, double truthAbove) {
    double own = sdStops * Math.sqrt(1 + 1.0 / firings);
    double combined = Math.hypot(own, commonStops);
    if (!(combined > 0)) {
      return tolerance.contains(meanStops + truthAbove) ? 1 : 0;
    }
    double degrees =
        WelchSatterthwaite.degrees(
            new double[] {own, commonStops}, new double[] {firings - 1, Double.POSITIVE_INFINITY});
    double above = (tolerance.slowStops() - meanStops - truthAbove) / combined;
    double below = (-tolerance.fastStops() - meanStops - truthAbove) / combined;
    return Student.below(above, degrees) - Student.below(below, degrees);
  }

  private Verdict verdict(Tolerance tolerance, DecisionRule rule, double half) {
    if (!rule.decides(firings)) {
      return Verdict.TOO_CLOSE_TO_CALL;
    }
    if (meanStops + half + shortStops <= tolerance.slowStops()
        && meanStops - half - longStops >= -tolerance.fastStops()) {
      return Verdict.WITHIN;
    }
    double risk = rule.risk(firings);
    // From here on up lie 1 - CONTENT of the exposures at least.
    double tail = ToleranceFactor.oneSided(firings, CONTENT, risk) * sdStops - rig(risk);
    if (meanStops + tail - longStops > tolerance.slowStops()) {
      return Verdict.SLOW;
    }
    return meanStops - tail + shortStops < -tolerance.fastStops()
        ? Verdict.FAST
        : Verdict.TOO_CLOSE_TO_CALL;
  }

  private double widest(double risk) {
    double factor =
        FACTORS.computeIfAbsent(
            new Asked(firings, 1 - risk),
            asked -> ToleranceFactor.twoSided(asked.firings, CONTENT, asked.confidence));
    return half(factor, risk);
  }

  private double half(double factor, double risk) {
    return factor * sdStops + rig(risk);
  }

  private double rig(double risk) {
    return NORMAL.inverseCumulativeProbability(1 - risk) * commonStops;
  }
}
