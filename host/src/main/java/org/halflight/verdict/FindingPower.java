package org.halflight.verdict;

import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.ScatterPower;
import org.halflight.stats.SharedScatter;
import org.halflight.stats.ShiftPower;

/**
 * How surely a comparison finds what is there, given that so many speeds are looked at together:
 * for the first step of Holm's method, and with all that the allowance for firings that depend on
 * one another leaves room for, so no less than what is stated here.
 *
 * @param shiftTests shifts that are tested together
 * @param scatterTests ratios of scatter that are tested together
 */
public record FindingPower(int shiftTests, int scatterTests) {
  /** 'Found in 8 of 10 cases'. */
  public static final double POWER = 0.8;

  /** The change of scatter that power is stated for: threefold either way. */
  public static final double RATIO = 3;

  /**
   * Of one speed nobody fires more than this, and nobody should: what a run lies off by does not
   * become less with it.
   */
  public static final int MOST_FIRINGS = 15;

  /** Where twice the firings make the shift that is found less by no more than this. */
  private static final double HARDLY = 0.2;

  private static final ScatterPower SCATTER = new ScatterPower(2000, 1974);

  private record Asked(double degrees, double alpha) {}

  // Pure functions that take a while, asked for the same few numbers again and again.
  private static final Map<Asked, Double> SHIFTS = new ConcurrentHashMap<>();
  private static final Map<Asked, Double> SCATTERS = new ConcurrentHashMap<>();
  private static final Map<Double, OptionalInt> NEEDED = new ConcurrentHashMap<>();

  public FindingPower {
    if (shiftTests < 1 || scatterTests < 1) {
      throw new IllegalArgumentException("no tests");
    }
  }

  /**
   * The shift at one speed that is found in 8 of 10 cases, in standard errors of that shift.
   *
   * @param degrees of freedom of the standard error
   */
  double shiftInStandardErrors(double degrees) {
    // Rounded, so that few different ones are asked for: a tenth is nothing here.
    return SHIFTS.computeIfAbsent(
        new Asked(
            Math.max(1, Math.rint(10 * Math.min(degrees, 1000)) / 10),
            RunComparison.SHIFT_ALPHA / shiftTests),
        asked -> ShiftPower.detectableInStandardErrors(asked.degrees, asked.alpha, POWER));
  }

  /**
   * The shift at one speed that is found in 8 of 10 cases, in standard deviations of one firing,
   * where both runs scatter alike and enough other speeds of the same half were fired.
   *
   * @param firings in each run, 2 or more
   */
  public double shiftInSds(int firings) {
    double own = firings - 1.0;
    return Math.sqrt(2 * MeanAllowance.USUAL.ofMean(firings))
        * shiftInStandardErrors(2 * (own + SharedScatter.weight(own)));
  }

  /**
   * Whether more firings than these hardly find smaller shifts, so that only another run helps:
   * twice as many make the shift that is found less by a fifth at the most.
   */
  public boolean isMoreOfLittleUse(int firings) {
    return firings >= MOST_FIRINGS
        || shiftInSds(2 * firings) >= (1 - HARDLY) * shiftInSds(firings);
  }

  /**
   * The chance to find that one speed's scatter changed threefold.
   *
   * @param firings in each run, 3 or more
   */
  public double scatterChance(int firings) {
    return SCATTERS.computeIfAbsent(
        new Asked(firings, scatterAlpha()),
        asked -> SCATTER.of((int) asked.degrees, (int) asked.degrees, RATIO, asked.alpha));
  }

  /**
   * How many firings in each run find a threefold change in 8 of 10 cases; empty where that takes
   * more than {@value #MOST_FIRINGS}.
   */
  public OptionalInt scatterFirings() {
    return NEEDED.computeIfAbsent(
        scatterAlpha(), alpha -> SCATTER.firingsNeeded(RATIO, alpha, POWER, MOST_FIRINGS));
  }

  private double scatterAlpha() {
    return RunComparison.SCATTER_ALPHA / scatterTests;
  }
}
