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
 * the error that {@link #methodErrorParts} bounds.
 */
public final class TwoLevelRule {
  /**
   * How far a level may lie from its node. Within it the method error of a round hole stays under
   * 1.5 % of opening plus closing time (0.7 % at the nodes themselves).
   */
  public static final double ALLOWED_LEVEL_DISTANCE = 0.03;

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
   * The greatest error of the rule as a part of opening plus closing time, over the two laws of a
   * round hole: radius growing evenly, and the same seen backwards (a start faster than its end).
   */
  public static double methodErrorParts(LevelPair levels) {
    OpeningLaw round = OpeningLaw.RADIUS_LINEAR;
    double slowStart =
        atHalf(round.timeTo(levels.low()), round.timeTo(levels.high()), levels) - round.lostPart();
    LevelPair mirrored = new LevelPair(1 - levels.high(), 1 - levels.low());
    double fastStart =
        atHalf(round.timeTo(mirrored.low()), round.timeTo(mirrored.high()), mirrored)
            - round.lostPart();
    return Math.max(Math.abs(slowStart), Math.abs(fastStart));
  }

  private static double atHalf(double low, double high, LevelPair levels) {
    return low + (high - low) * (0.5 - levels.low()) / (levels.high() - levels.low());
  }
}
