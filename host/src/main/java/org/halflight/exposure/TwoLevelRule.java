package org.halflight.exposure;

/**
 * Effective time from the widths at two levels, without a model of the blades.
 *
 * <p>The effective time is exactly the integral over all levels {@code q} of the time {@code W(q)}
 * for which the light is above {@code q}. Two-point Gauss-Legendre quadrature gives it as the mean
 * of the widths at the levels {@link LevelPair#GAUSS}, exact for any {@code W} that is a cubic in
 * {@code q}. Widths at levels beside these nodes are first moved to the nodes along the straight
 * line through them; since the nodes lie evenly about one half, the mean is then the height of that
 * line at one half. That is exact where the area of the hole grows evenly, and for other laws adds
 * the error that {@link #errorShare} bounds.
 */
public final class TwoLevelRule {
  /**
   * How far a level may lie from its node. Within it {@link #errorShare} stays under 7.4 % (3.9 %
   * at the nodes themselves).
   */
  public static final double ALLOWED_LEVEL_DISTANCE = 0.03;

  /** The laws of ramps that {@link #errorShare} covers go from this power to the next. */
  public static final double LEAST_POWER = 0.5;

  /** See {@link #LEAST_POWER}. */
  public static final double GREATEST_POWER = 4;

  /** Steps between the two; the worst is at one end or the other. */
  private static final int POWERS = 35;

  private record Share(LevelPair levels, double share) {}

  /** The levels in force change when the light is set, and are asked for at each firing. */
  private static volatile Share lastShare = new Share(LevelPair.GAUSS, worstShare(LevelPair.GAUSS));

  private TwoLevelRule() {}

  /** Whether both levels lie near enough to the nodes. */
  public static boolean allows(LevelPair levels) {
    return Math.abs(levels.low() - LevelPair.GAUSS.low()) <= ALLOWED_LEVEL_DISTANCE
        && Math.abs(levels.high() - LevelPair.GAUSS.high()) <= ALLOWED_LEVEL_DISTANCE;
  }

  /**
   * The effective time in seconds.
   *
   * @param levels levels that {@link #allows} accepts
   */
  public static double effectiveSeconds(double lowSeconds, double highSeconds, LevelPair levels) {
    if (!allows(levels)) {
      throw new IllegalArgumentException(levels + " is too far from " + LevelPair.GAUSS);
    }
    return atHalf(lowSeconds, highSeconds, levels);
  }

  /**
   * The greatest error of the rule as a share of {@code W(q1) - W(q2)}, what the widths at the two
   * levels differ by: 0.0386 at the nodes. It holds for opening and closing each by a law of its
   * own among {@code E = x^p} and {@code E = 1 - (1 - x)^p}, the same backwards, for {@code p} from
   * 0.5 to 4, and for star-shaped holes of five blades at constant, accelerating or braking speed.
   * Both ramps share one bound, since the error of a sum is at most the greatest share of its
   * parts, times the sum.
   *
   * <p>It is <b>no bound for ramps that stick</b>: blades that rest on their way, or turn round
   * below full light. No two levels bound those.
   */
  public static double errorShare(LevelPair levels) {
    Share known = lastShare;
    if (!known.levels.equals(levels)) {
      known = new Share(levels, worstShare(levels));
      lastShare = known;
    }
    return known.share;
  }

  /**
   * The bound of the error of the rule in seconds, plus or minus; see {@link #errorShare}.
   *
   * @param levels levels in force
   */
  public static double errorSeconds(double lowSeconds, double highSeconds, LevelPair levels) {
    return errorShare(levels) * Math.max(0, lowSeconds - highSeconds);
  }

  private static double worstShare(LevelPair levels) {
    double worst = 0;
    for (int i = 0; i <= POWERS; i++) {
      double power = LEAST_POWER + i * (GREATEST_POWER - LEAST_POWER) / POWERS;
      double low = Math.pow(levels.low(), 1 / power);
      double high = Math.pow(levels.high(), 1 / power);
      worst = Math.max(worst, share(low, high, power / (power + 1), levels));
      // Backwards: the time to a level is one less that to its counterpart.
      low = 1 - Math.pow(1 - levels.low(), 1 / power);
      high = 1 - Math.pow(1 - levels.high(), 1 / power);
      worst = Math.max(worst, share(low, high, 1 / (power + 1), levels));
    }
    return worst;
  }

  private static double share(double low, double high, double lost, LevelPair levels) {
    return Math.abs(atHalf(low, high, levels) - lost) / (high - low);
  }

  private static double atHalf(double low, double high, LevelPair levels) {
    return low + (high - low) * (0.5 - levels.low()) / (levels.high() - levels.low());
  }
}
