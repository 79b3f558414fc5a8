package org.halflight.verdict;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;

/**
 * How many firings of a setting lie beyond its limits: what a verdict on the usual exposure, the
 * median, asks for beside the mean once there are enough of them. Where half of all exposures or
 * more lie beyond a limit, as few as {@link #most} of the firings do so in one sample of sixteen at
 * most, however they scatter (sign test).
 *
 * @param firings that were timed
 * @param slow how many of them lie beyond the slow limit
 * @param fast how many lie beyond the fast limit
 */
public record BeyondLimits(int firings, int slow, int fast) {
  /** Fewer firings are decided by their mean alone; for those it keeps its word by itself. */
  public static final int LEAST = 7;

  /** Chance of a false claim by the count alone. */
  private static final double RISK = 1.0 / 16;

  /** The chance of one firing of seven is just that, and must not be lost to rounding. */
  private static final double ROUNDING = 1e-9;

  public BeyondLimits {
    if (firings < 0 || slow < 0 || fast < 0 || slow + fast > firings) {
      throw new IllegalArgumentException(
          "of " + firings + " firings not " + slow + " and " + fast + " lie beyond the limits");
    }
  }

  /** Counts errors against a tolerance; one on a limit is not beyond it. */
  public static BeyondLimits of(Sample errors, Tolerance tolerance) {
    int slow = 0;
    int fast = 0;
    for (double stops : errors.values()) {
      slow += stops > tolerance.slowStops() ? 1 : 0;
      fast += stops < -tolerance.fastStops() ? 1 : 0;
    }
    return new BeyondLimits(errors.n(), slow, fast);
  }

  /**
   * The most firings that may lie on the wrong side of a limit for a claim about the median: any
   * below {@link #LEAST}, then 1 of 7, 2 of 10, 4 of 15, 6 of 20, 10 of 30.
   */
  public static int most(int firings) {
    if (firings < LEAST) {
      return firings;
    }
    BinomialDistribution tosses = new BinomialDistribution(null, firings, 0.5);
    int most = tosses.inverseCumulativeProbability(RISK);
    return tosses.cumulativeProbability(most) <= RISK + ROUNDING ? most : most - 1;
  }

  /** How many lie beyond either limit. */
  public int either() {
    return slow + fast;
  }

  /**
   * Whether the count lets something be claimed of the median.
   *
   * @param claim within, slow or fast; anything else claims nothing
   */
  public boolean allow(Verdict claim) {
    return allow(claim, firings);
  }

  /** The same had there been another number of firings with the same share of them beyond. */
  boolean allow(Verdict claim, int then) {
    return Math.ceil((double) against(claim) * then / firings - ROUNDING) <= most(then);
  }

  /** How many firings speak against a claim. */
  public int against(Verdict claim) {
    return switch (claim) {
      case WITHIN -> either();
      case SLOW -> firings - slow;
      case FAST -> firings - fast;
      default -> 0;
    };
  }
}
