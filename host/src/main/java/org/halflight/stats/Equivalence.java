package org.halflight.stats;

/**
 * Whether two samples are the same for all that matters: two one-sided tests (Schuirmann 1987). No
 * evidence of a shift is not evidence that there is none; this is.
 *
 * @param pNotBelow the chance of such a shift where the true one lies at or below the lower margin
 * @param pNotAbove the chance of such a shift where the true one lies at or above the upper margin
 */
public record Equivalence(double pNotBelow, double pNotAbove) {
  /**
   * Tests a shift against margins that were chosen before the firings.
   *
   * @param lower the largest shift down that does not matter, below {@code upper}
   * @param upper the largest shift up that does not matter
   */
  public static Equivalence of(MeanShift shift, double lower, double upper) {
    if (!(lower < upper)) {
      throw new IllegalArgumentException("margins run from low to high: " + lower + " " + upper);
    }
    double aboveLower = (shift.shift() - lower) / shift.standardError();
    double belowUpper = (upper - shift.shift()) / shift.standardError();
    return new Equivalence(
        Student.below(-aboveLower, shift.degreesOfFreedom()),
        Student.below(-belowUpper, shift.degreesOfFreedom()));
  }

  /** The larger of the two: both must be small. */
  public double p() {
    return Math.max(pNotBelow, pNotAbove);
  }

  /**
   * Whether the shift is shown to lie within the margins; the same as the interval of level 1 - 2
   * alpha lying within them.
   */
  public boolean shown(double alpha) {
    return p() <= alpha;
  }
}
