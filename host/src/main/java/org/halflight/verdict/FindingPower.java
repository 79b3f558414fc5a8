package org.halflight.verdict;

import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.halflight.stats.ScatterPower;
import org.halflight.stats.WelchPower;

/**
 * How surely a comparison finds what is there, given that so many speeds are looked at together:
 * for the first step of Holm's method, so no less than what is stated here.
 *
 * @param shiftTests shifts that are tested together
 * @param scatterTests ratios of scatter that are tested together
 */
public record FindingPower(int shiftTests, int scatterTests) {
  /** 'Found in 8 of 10 cases'. */
  public static final double POWER = 0.8;

  /** The change of scatter that power is stated for: threefold either way. */
  public static final double RATIO = 3;

  /** Where nobody fires on. */
  private static final int MOST_FIRINGS = 200;

  private static final ScatterPower SCATTER = new ScatterPower(2000, 1974);

  private record Asked(int firings, double alpha) {}

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
   * The shift at one speed that is found in 8 of 10 cases, in standard deviations of one firing.
   *
   * @param firings in each run, 2 or more
   */
  public double shiftInSds(int firings) {
    return SHIFTS.computeIfAbsent(
        new Asked(firings, RunComparison.SHIFT_ALPHA / shiftTests),
        asked -> WelchPower.USUAL.detectableShiftInSds(asked.firings, asked.alpha, POWER));
  }

  /**
   * The chance to find that one speed's scatter changed threefold.
   *
   * @param firings in each run, 3 or more
   */
  public double scatterChance(int firings) {
    return SCATTERS.computeIfAbsent(
        new Asked(firings, scatterAlpha()),
        asked -> SCATTER.of(asked.firings, asked.firings, RATIO, asked.alpha));
  }

  /** How many firings in each run find a threefold change in 8 of 10 cases. */
  public OptionalInt scatterFirings() {
    return NEEDED.computeIfAbsent(
        scatterAlpha(), alpha -> SCATTER.firingsNeeded(RATIO, alpha, POWER, MOST_FIRINGS));
  }

  private double scatterAlpha() {
    return RunComparison.SCATTER_ALPHA / scatterTests;
  }
}
