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
}
