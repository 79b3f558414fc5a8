package org.halflight.verdict;

/**
 * Whether the three places of a frame got the same light.
 *
 * @param kind how it is
 * @param stops by how much, not below 0: end against start, or the brightest against the darkest
 */
public record Evenness(Kind kind, double stops) {
  /** How a frame can be. */
  public enum Kind {
    /** All three places are within the limit of each other; the outer 5 % are not seen. */
    EVEN,
    /** The end got less than the start. */
    END_DARKER,
    /** The end got more than the start. */
    END_BRIGHTER,
    /** The ends agree more or less, and the centre differs from them. */
    UNEVEN
  }

  /** Of so much of all the unevenness, the slope explains it. Our choice. */
  private static final double SLOPE_SHARE = 0.6;

  /**
   * By slope and range, since curtains can be fast or slow in the middle alone.
   *
   * @param slopeStops the end against the start, above 0 brighter
   * @param rangeStops the brightest of the three places against the darkest
   * @param limitStops see {@link CurtainLimits#slopeStops}
   */
  public static Evenness of(double slopeStops, double rangeStops, double limitStops) {
    if (rangeStops <= limitStops) {
      return new Evenness(Kind.EVEN, rangeStops);
    }
    if (Math.abs(slopeStops) < SLOPE_SHARE * rangeStops) {
      return new Evenness(Kind.UNEVEN, rangeStops);
    }
    return new Evenness(slopeStops < 0 ? Kind.END_DARKER : Kind.END_BRIGHTER, Math.abs(slopeStops));
  }
}
