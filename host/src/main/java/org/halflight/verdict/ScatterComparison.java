package org.halflight.verdict;

import java.util.OptionalDouble;
import org.halflight.stats.Figure;

/**
 * The scatter of two runs, at one speed or over a group of speeds.
 *
 * @param before standard deviation of one firing before, in stops; over a group, pooled
 * @param after the same after
 * @param ratio after over before
 * @param p the chance of such a difference where there is none: Brown and Forsythe at one speed
 * @param adjustedP the chance of the test after Holm over all tests of its kind
 * @param firings in the smaller of the two runs
 * @param alpha that the adjusted chance is held against
 * @param power of the tests of this comparison
 */
public record ScatterComparison(
    Figure<Double> before,
    Figure<Double> after,
    Figure<Ratio> ratio,
    Figure<Double> p,
    OptionalDouble adjustedP,
    int firings,
    double alpha,
    FindingPower power) {
  /**
   * A ratio of standard deviations.
   *
   * @param ratio after over before
   * @param low lower end of its interval of confidence {@link SpeedSummary#LEVEL}
   * @param high upper end
   */
  public record Ratio(double ratio, double low, double high) {}

  /** Whether the scatter is shown to have changed. */
  public boolean found() {
    return adjustedP.isPresent() && adjustedP.getAsDouble() <= alpha;
  }

  ScatterComparison withAdjustedP(double adjusted) {
    return new ScatterComparison(
        before, after, ratio, p, OptionalDouble.of(adjusted), firings, alpha, power);
  }
}
