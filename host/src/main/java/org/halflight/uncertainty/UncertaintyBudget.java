package org.halflight.uncertainty;

import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.stats.Student;
import org.halflight.stats.WelchSatterthwaite;

/**
 * The uncertainty of the mean effective time of one setting, part by part (JCGM 100:2008).
 *
 * @param effectiveSeconds the mean that it is about
 * @param rows one for each {@link Part} that has a share in it
 */
public record UncertaintyBudget(double effectiveSeconds, List<BudgetRow> rows) {
  /** Rounding must not cut a whole number of degrees of freedom. */
  private static final double WHOLE = 1e-9;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  public UncertaintyBudget {
    if (!(effectiveSeconds > 0)) {
      throw new IllegalArgumentException("an effective time is above 0 s: " + effectiveSeconds);
    }
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a budget has a row");
    }
  }

  /**
   * Draws up a budget.
   *
   * @param effectiveSeconds mean effective time
   * @param travel of the blades at this speed
   * @param rig what is known of it
   * @param scatterStops standard deviation of the firings
   * @param firings how many, two or more
   */
  public static UncertaintyBudget of(
      double effectiveSeconds,
      BladeTravel travel,
      RigKnowledge rig,
      double scatterStops,
      int firings) {
    if (firings < 2 || !(scatterStops >= 0)) {
      throw new IllegalArgumentException(
          "a budget takes two firings with a scatter: " + firings + ", " + scatterStops);
    }
    Doubt rule =
        rig.equals(RigKnowledge.NO_RIG)
            ? Doubt.NONE
            : Doubt.within(travel.methodSeconds(), Basis.ALLOWANCE);
    double t = effectiveSeconds;
    return new UncertaintyBudget(
        t,
        List.of(
            // The mean of both widths shrinks by the ramps times the common error of the levels
            // where the area grows evenly, and by less for a round hole.
            BudgetRow.of(Part.LEVELS, rig.levels(), travel.rampSeconds(), t),
            // An error of full light moves each level by its own share of it: by half on average.
            BudgetRow.of(Part.LAMP, rig.lamp(), travel.rampSeconds() / 2, t),
            BudgetRow.of(Part.METHOD, rule, 1, t),
            BudgetRow.of(Part.DELAY, rig.delaySeconds(), 1, t),
            // Half of it on each edge, so that ramps alike cancel it.
            BudgetRow.of(Part.HYSTERESIS, rig.hysteresis(), travel.unlikeSeconds() / 2, t),
            BudgetRow.of(Part.QUANTISATION, rig.quantisationSeconds(), 1, t),
            BudgetRow.of(Part.CLOCK, rig.clock(), t, t),
            repeatability(scatterStops, firings, t)));
  }

  /** The row of the scatter of the firings. */
  static BudgetRow repeatability(double scatterStops, int firings, double effectiveSeconds) {
    Doubt doubt =
        new Doubt(
            Distribution.NORMAL, scatterStops / Math.sqrt(firings), firings - 1, Basis.FIRINGS);
    return BudgetRow.of(
        Part.REPEATABILITY, doubt, effectiveSeconds * Math.log(2), effectiveSeconds);
  }

  /** Combined standard uncertainty in seconds. */
  public double combinedSeconds() {
    return rootOfSquares(rows);
  }

  /** Combined standard uncertainty in stops, by the slope of the logarithm at the mean. */
  public double combinedStops() {
    return combinedSeconds() / (effectiveSeconds * Math.log(2));
  }

  /** The part of {@link #combinedStops} that more firings do not lessen. */
  public double commonStops() {
    return rootOfSquares(rows.stream().filter(BudgetRow::isCommon).toList())
        / (effectiveSeconds * Math.log(2));
  }

  /** Effective degrees of freedom (Welch and Satterthwaite; JCGM 100:2008, G.4). */
  public double degrees() {
    return WelchSatterthwaite.degrees(
        rows.stream().mapToDouble(BudgetRow::standardSeconds).toArray(),
        rows.stream().mapToDouble(row -> row.doubt().degrees()).toArray());
  }

  /**
   * The factor that makes an interval of the combined uncertainty.
   *
   * <p>Student's quantile of the effective degrees of freedom; where rectangular parts rule, times
   * the share to which the sum of all parts is narrower than a normal one at that level.
   *
   * @param level confidence of the interval to both sides
   */
  public double coverageFactor(double level) {
    double p = (1 + level) / 2;
    double combined = combinedSeconds();
    if (!(combined > 0)) {
      return student(p, degrees());
    }
    double normal =
        rootOfSquares(
            rows.stream().filter(r -> r.doubt().distribution() == Distribution.NORMAL).toList());
    double[] bounds =
        rows.stream()
            .filter(r -> r.doubt().distribution() == Distribution.RECTANGULAR)
            .mapToDouble(r -> r.sensitivity() * r.doubt().bound())
            .toArray();
    double shape =
        NormalAndRectangles.quantile(p, normal, bounds)
            / (combined * NORMAL.inverseCumulativeProbability(p));
    return student(p, degrees()) * shape;
  }

  /** Half the width of the interval of the mean, in seconds. */
  public double expandedSeconds(double level) {
    return coverageFactor(level) * combinedSeconds();
  }

  /** Half the width of the interval of the mean, in stops. */
  public double expandedStops(double level) {
    return coverageFactor(level) * combinedStops();
  }

  /**
   * The guard band of a decision at one limit: Student's one-sided quantile of the effective
   * degrees of freedom times the combined uncertainty, in stops (after JCGM 106:2012, clause 8).
   *
   * @param risk of a false decision where the truth lies on the limit
   */
  public double guardStops(double risk) {
    return student(1 - risk, degrees()) * combinedStops();
  }

  /** The chance that the truth lies less than so many stops above the mean. */
  public double chanceBelow(double stopsAboveMean) {
    double combined = combinedStops();
    if (!(combined > 0)) {
      return stopsAboveMean < 0 ? 0 : 1;
    }
    double t = stopsAboveMean / combined;
    return Student.below(t, degrees());
  }

  /** The same budget had there been another number of firings with the same scatter. */
  public UncertaintyBudget withFirings(int now, int then) {
    return new UncertaintyBudget(
        effectiveSeconds,
        rows.stream()
            .map(
                row ->
                    row.isCommon()
                        ? row
                        : BudgetRow.of(
                            row.part(),
                            new Doubt(
                                row.doubt().distribution(),
                                row.doubt().standard() * Math.sqrt((double) now / then),
                                then - 1,
                                row.doubt().basis()),
                            row.sensitivity(),
                            effectiveSeconds))
            .toList());
  }

  /** The share of a row in the combined variance; 0 where nothing scatters. */
  public double share(BudgetRow row) {
    double combined = combinedSeconds();
    return combined > 0 ? Math.pow(row.standardSeconds() / combined, 2) : 0;
  }

  /** Whether allowances for a rig that nobody calibrated make up half of the variance or more. */
  public boolean allowancesRule() {
    return rows.stream()
            .filter(row -> row.doubt().basis() == Basis.ALLOWANCE)
            .mapToDouble(this::share)
            .sum()
        >= 0.5;
  }

  /**
   * Student's quantile, with the degrees of freedom cut to a whole number, which errs to the safe
   * side (JCGM 100:2008, G.4.1); the normal one where they are infinite.
   */
  private static double student(double p, double degrees) {
    return Student.quantile(p, Math.max(1, Math.floor(degrees + WHOLE)));
  }

  private static double rootOfSquares(List<BudgetRow> rows) {
    return Math.sqrt(
        rows.stream().mapToDouble(r -> r.standardSeconds() * r.standardSeconds()).sum());
  }
}
