package org.halflight.speeds;

/** Exposure differences in stops: one stop is a factor of two in time. */
public final class Stops {
  private static final double LN_2 = Math.log(2);

  private Stops() {}

  /**
   * The error of a time against a reference, {@code log2(t / reference)}: above zero is slow (too
   * much exposure), below zero is fast.
   *
   * @param seconds the measured time, above zero
   * @param referenceSeconds the reference time, above zero
   */
  public static double between(double seconds, double referenceSeconds) {
    if (!(seconds > 0) || !(referenceSeconds > 0)) {
      throw new IllegalArgumentException(
          "times must be above zero: " + seconds + " s and " + referenceSeconds + " s");
    }
    return Math.log(seconds / referenceSeconds) / LN_2;
  }

  /** The ratio of two times that lie a number of stops apart: {@code 2^stops}. */
  public static double ratio(double stops) {
    // Whole stops exactly, without trusting the accuracy of pow.
    return stops == Math.rint(stops) && Math.abs(stops) < 1000
        ? Math.scalb(1.0, (int) stops)
        : Math.pow(2, stops);
  }
}
