package org.halflight.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.halflight.stats.Student;
import org.halflight.stats.WelchSatterthwaite;

/**
 * The uncertainty of the mean effective time of one setting, part by part (JCGM 100:2008).
 *
 * <p>Biases are apart from the rest: each is one error of all firings, anywhere up to its bound,
 * and no number of firings or sessions averages it out. They are added by their bounds, while what
 * scatters is combined by its squares. An interval is then the least one that holds the truth with
 * its confidence wherever the biases lie: with {@code b} half the way that they leave open and
 * {@code s} the combined uncertainty of the rest, {@code s} times the quantile of {@code |t + b/s|}
 * about the middle of that way, where {@code t} is Student's with the degrees of freedom of {@code
 * s}. Without degrees of freedom to count that quantile is 1.96, 2.18, 2.65 and 3.64 at {@code b/s}
 * of 0, 0.5, 1 and 2, and {@code b/s + 1.645} beyond.
 *
 * @param effectiveSeconds the mean that it is about
 * @param rows one for each {@link UncertaintySource} that has a share in it
 */
public record UncertaintyBudget(double effectiveSeconds, List<BudgetRow> rows) {
  /** Rounding must not cut a whole number of degrees of freedom. */
  private static final double WHOLE = 1e-9;

  /** Behind the rule of two levels. */
  private static final int REBOUND_PLACE = 3;

  private static final int STEPS = 60;

  private static final double FINE = 1e-7;

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
      RampTravel travel,
      RigKnowledge rig,
      double scatterStops,
      int firings) {
    if (firings < 2 || !(scatterStops >= 0)) {
      throw new IllegalArgumentException(
          "a budget takes two firings with a scatter: " + firings + ", " + scatterStops);
    }
    InputUncertainty rule =
        rig.equals(RigKnowledge.NO_RIG)
            ? InputUncertainty.NONE
            : travel.isCorrected()
                ? InputUncertainty.within(travel.methodSeconds(), Basis.ALLOWANCE)
                : InputUncertainty.bias(travel.methodSeconds(), Basis.ALLOWANCE);
    InputUncertainty rebound =
        rig.equals(RigKnowledge.NO_RIG)
            ? InputUncertainty.NONE
            : InputUncertainty.bias(travel.outsideBoundSeconds(), Basis.ALLOWANCE);
    double t = effectiveSeconds;
    List<BudgetRow> rows = new ArrayList<>();
    rows.addAll(
        List.of(
            // The mean of both widths shrinks by the ramps times the common error of the levels
            // where the area grows evenly, and by less for a round hole.
            BudgetRow.of(UncertaintySource.LEVELS, rig.levels(), travel.rampSeconds(), t),
            // An error of full light moves each level by its own share of it: by half on average.
            BudgetRow.of(UncertaintySource.LAMP, rig.lamp(), travel.rampSeconds() / 2, t),
            BudgetRow.of(UncertaintySource.METHOD, rule, 1, t),
            BudgetRow.of(UncertaintySource.PUPIL, rig.pupil(), travel.roundRampSeconds(), t),
            BudgetRow.of(UncertaintySource.DELAY, rig.delaySeconds(), 1, t),
            // Half of it on each edge, so that ramps alike cancel it.
            BudgetRow.of(
                UncertaintySource.HYSTERESIS, rig.hysteresis(), travel.unlikeSeconds() / 2, t),
            BudgetRow.of(UncertaintySource.QUANTISATION, rig.quantisationSeconds(), 1, t),
            BudgetRow.of(UncertaintySource.CLOCK, rig.clock(), t, t),
            repeatability(scatterStops, firings, t)));
    if (rebound.standard() > 0) {
      rows.add(REBOUND_PLACE, BudgetRow.of(UncertaintySource.REBOUND, rebound, 1, t));
    }
    return new UncertaintyBudget(t, rows);
  }

  /** The row of the scatter of the firings. */
  static BudgetRow repeatability(double scatterStops, int firings, double effectiveSeconds) {
    InputUncertainty doubt =
        new InputUncertainty(
            Distribution.NORMAL, scatterStops / Math.sqrt(firings), firings - 1, Basis.FIRINGS);
    return BudgetRow.of(
        UncertaintySource.REPEATABILITY, doubt, effectiveSeconds * Math.log(2), effectiveSeconds);
  }

  /** Combined standard uncertainty of all but the biases, in seconds. */
  public double combinedSeconds() {
    return rootOfSquares(rows.stream().filter(row -> !row.isBias()).toList());
  }

  /** The same in stops, by the slope of the logarithm at the mean. */
  public double combinedStops() {
    return stops(combinedSeconds());
  }

  /** The part of {@link #combinedStops} that more firings do not lessen. */
  public double commonStops() {
    return stops(
        rootOfSquares(rows.stream().filter(row -> row.isCommon() && !row.isBias()).toList()));
  }

  /** By what biases may make the mean read short, all of them together, in seconds. */
  public double readsShortSeconds() {
    return boundSeconds(Distribution.BIAS);
  }

  /** By what biases may make the mean read long, likewise. */
  public double readsLongSeconds() {
    return readsShortSeconds() + boundSeconds(Distribution.READS_LONG);
  }

  /** {@link #readsShortSeconds} in stops. */
  public double readsShortStops() {
    return stops(readsShortSeconds());
  }

  /** {@link #readsLongSeconds} in stops. */
  public double readsLongStops() {
    return stops(readsLongSeconds());
  }

  private double boundSeconds(Distribution kind) {
    return rows.stream()
        .filter(row -> row.doubt().distribution() == kind)
        .mapToDouble(BudgetRow::standardSeconds)
        .sum();
  }

  /** Effective degrees of freedom (Welch and Satterthwaite; JCGM 100:2008, G.4), of no bias. */
  public double degrees() {
    return degrees(rows.stream().filter(row -> !row.isBias()).toList());
  }

  private static double degrees(List<BudgetRow> scattering) {
    return scattering.isEmpty()
        ? Double.POSITIVE_INFINITY
        : WelchSatterthwaite.degrees(
            scattering.stream().mapToDouble(BudgetRow::standardSeconds).toArray(),
            scattering.stream().mapToDouble(row -> row.doubt().degrees()).toArray());
  }

  /**
   * The factor on the combined uncertainty within {@link #expandedSeconds}, beside the biases: the
   * quantile to both sides of what scatters where there is no bias, and down to that to one side
   * where a bias rules, since the truth then lies beyond one end only.
   *
   * <p>With biases {@code b} the half width is the least {@code x} that holds the error at its
   * level wherever the bias lies: with the bias at its bound the error stays between both ends with
   * the chance {@code F(x - b) - F(-x - b)}, where {@code F} is the distribution of what scatters:
   * Student's t of the parts that are normal, with their degrees of freedom, and each rectangle.
   *
   * @param level confidence of the interval to both sides
   */
  public double coverageFactor(double level) {
    double combined = combinedSeconds();
    if (!(combined > 0)) {
      return student((1 + level) / 2, degrees());
    }
    StudentAndRectangles scatter = scatter((1 + level) / 2);
    double bias = (readsShortSeconds() + readsLongSeconds()) / 2;
    double low = bias;
    double high = bias + combined;
    while (held(scatter, high, bias) < level) {
      high += high - bias;
    }
    for (int i = 0; i < STEPS && high - low > FINE * high; i++) {
      double middle = (low + high) / 2;
      if (held(scatter, middle, bias) < level) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (high - bias) / combined;
  }

  private static double held(StudentAndRectangles scatter, double half, double bias) {
    return scatter.below(half - bias) - scatter.below(-half - bias);
  }

  /**
   * What is no bias, in seconds.
   *
   * @param shown the chance at which tails too long to be folded are right
   */
  private StudentAndRectangles scatter(double shown) {
    List<BudgetRow> scattering =
        rows.stream().filter(r -> r.doubt().distribution() == Distribution.NORMAL).toList();
    double scale = rootOfSquares(scattering);
    double own = whole(degrees(scattering));
    double[] bounds =
        rows.stream()
            .filter(r -> r.doubt().distribution() == Distribution.RECTANGULAR)
            .mapToDouble(r -> r.sensitivity() * r.doubt().bound())
            .toArray();
    int least = StudentAndRectangles.LEAST_DEGREES;
    // The tails of fewer reach too far to be folded: those of three, drawn out as far as theirs.
    return own < least
        ? StudentAndRectangles.of(
            scale * student(shown, own) / student(shown, least), least, bounds)
        : StudentAndRectangles.of(scale, own, bounds);
  }

  /** Half the width of the interval of the mean, in seconds: biases and the rest. */
  public double expandedSeconds(double level) {
    return (readsShortSeconds() + readsLongSeconds()) / 2
        + coverageFactor(level) * combinedSeconds();
  }

  /** Half the width of the interval of the mean, in stops. */
  public double expandedStops(double level) {
    return stops(expandedSeconds(level));
  }

  /**
   * From the mean to the middle of its interval, in stops: below 0 by half of what makes times read
   * long only.
   */
  public double middleStops() {
    return (readsShortStops() - readsLongStops()) / 2;
  }

  /**
   * How far above the mean the truth may lie at a risk to one side, in stops: what biases may hide
   * in that direction, and Student's one-sided quantile of the effective degrees of freedom times
   * the combined uncertainty (after JCGM 106:2012, clause 8). To one side a bias adds as it is.
   *
   * @param risk of a false decision where the truth lies on the limit
   */
  public double guardAboveStops(double risk) {
    return readsShortStops() + student(1 - risk, degrees()) * combinedStops();
  }

  /** How far below the mean the truth may lie, likewise. */
  public double guardBelowStops(double risk) {
    return readsLongStops() + student(1 - risk, degrees()) * combinedStops();
  }

  /**
   * The chance that the truth lies less than so many stops above the mean; at least this, wherever
   * the biases lie.
   */
  public double chanceBelow(double stopsAboveMean) {
    return below(stopsAboveMean - readsShortStops());
  }

  /**
   * The chance that the truth lies between two places, in stops above the mean; at least this,
   * wherever the biases lie.
   */
  public double chanceBetween(double fromStops, double toStops) {
    // The chance has one hill over the bias, so that it is least at an end.
    double truthLonger = below(toStops - readsShortStops()) - below(fromStops - readsShortStops());
    double truthShorter = below(toStops + readsLongStops()) - below(fromStops + readsLongStops());
    return Math.max(0, Math.min(truthLonger, truthShorter));
  }

  private double below(double stops) {
    double combined = combinedStops();
    return combined > 0 ? Student.below(stops / combined, degrees()) : stops < 0 ? 0 : 1;
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
                            new InputUncertainty(
                                row.doubt().distribution(),
                                row.doubt().standard() * Math.sqrt((double) now / then),
                                then - 1,
                                row.doubt().basis()),
                            row.sensitivity(),
                            effectiveSeconds))
            .toList());
  }

  /**
   * The share of a row in the mean square of the error, with every bias at its bound; 0 where there
   * is no error. All rows together make 1.
   */
  public double share(BudgetRow row) {
    double bias = readsLongSeconds();
    double whole = Math.pow(combinedSeconds(), 2) + bias * bias;
    double own = row.standardSeconds() * (row.isBias() ? bias : row.standardSeconds());
    return whole > 0 ? own / whole : 0;
  }

  /** Whether allowances for a rig that nobody calibrated make up half of the error or more. */
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
    return Student.quantile(p, whole(degrees));
  }

  private static double whole(double degrees) {
    return Math.max(1, Math.floor(degrees + WHOLE));
  }

  private double stops(double seconds) {
    return seconds / (effectiveSeconds * Math.log(2));
  }

  private static double rootOfSquares(List<BudgetRow> rows) {
    return Math.sqrt(
        rows.stream().mapToDouble(r -> r.standardSeconds() * r.standardSeconds()).sum());
  }
}
