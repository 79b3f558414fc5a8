package org.halflight.stats;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How surely a shift of the mean between two equally large samples is found by a two-sided t test;
 * by the noncentral t with 2n - 2 degrees of freedom. Exact for equal scatter, where Welch's test
 * loses little against the pooled one; shifts are given in standard deviations.
 */
public final class ShiftPower {
  /** More firings than anybody fires: where the search for a number ends. */
  private static final int MOST = 1_000_000;

  private ShiftPower() {}

  /**
   * The chance to find a shift.
   *
   * @param firings in each sample, 2 or more
   * @param shiftInSds true shift over standard deviation of single firings
   * @param alpha chance to find one where there is none
   */
  public static double of(int firings, double shiftInSds, double alpha) {
    if (firings < 2) {
      throw new IllegalArgumentException("comparing takes 2 firings each, not " + firings);
    }
    Interval.checkLevel(alpha);
    return ofStandardErrors(2.0 * firings - 2, shiftInSds * Math.sqrt(firings / 2.0), alpha);
  }

  private static double ofStandardErrors(double degrees, double shift, double alpha) {
    double critical = Student.quantile(1 - alpha / 2, degrees);
    NoncentralT t = new NoncentralT(degrees, shift);
    return 1 - t.cumulative(critical) + t.cumulative(-critical);
  }

  /**
   * The smallest shift, in standard deviations, that is found with a given chance.
   *
   * @param firings in each sample, 2 or more
   * @param power the chance, above alpha and below 1
   */
  public static double detectableShiftInSds(int firings, double alpha, double power) {
    return Math.sqrt(2.0 / firings)
        * detectableInStandardErrors(2.0 * firings - 2, alpha, power);
  }

  /**
   * The smallest shift, in standard errors of it, that is found with a given chance.
   *
   * @param degrees of freedom of the standard error, 1 or more
   * @param power the chance, above alpha and below 1
   */
  public static double detectableInStandardErrors(double degrees, double alpha, double power) {
    checkPower(alpha, power);
    double high = 1;
    while (ofStandardErrors(degrees, high, alpha) < power) {
      high *= 2;
    }
    return new BrentSolver(1e-10, 1e-10)
        .solve(200, shift -> ofStandardErrors(degrees, shift, alpha) - power, 0, high);
  }

  /**
   * How many firings in each sample find a shift with a given chance.
   *
   * @param shiftInSds size of the true shift over standard deviation, above zero
   * @param power the chance, above alpha and below 1
   */
  public static int firingsNeeded(double shiftInSds, double alpha, double power) {
    checkPower(alpha, power);
    if (!(shiftInSds > 0)) {
      throw new IllegalArgumentException("a shift to be found is above zero, not " + shiftInSds);
    }
    int enough = 2;
    while (of(enough, shiftInSds, alpha) < power) {
      if (enough > MOST) {
        throw new IllegalArgumentException("no number of firings finds a shift of " + shiftInSds);
      }
      enough *= 2;
    }
    int few = enough / 2;
    while (enough - few > 1) {
      int middle = (few + enough) / 2;
      if (of(middle, shiftInSds, alpha) < power) {
        few = middle;
      } else {
        enough = middle;
      }
    }
    return enough;
  }

  private static void checkPower(double alpha, double power) {
    Interval.checkLevel(alpha);
    if (!(power > alpha && power < 1)) {
      throw new IllegalArgumentException("a power lies above alpha and below 1, not " + power);
    }
  }
}
