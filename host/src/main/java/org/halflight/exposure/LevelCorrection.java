package org.halflight.exposure;

import org.halflight.time.TickRate;

/**
 * The effective time where rising and falling light is seen at levels of their own: hysteresis and
 * offset of the comparators, and thresholds beside the nodes. Each crossing is moved to its node
 * along its own ramp, and the rule of two levels then holds as it stands.
 *
 * <p>On a ramp {@code E = x^p} the time to a level is a straight line in {@code q^(1/p)}, so
 * between the two crossings that were seen nothing but {@code p} is taken on trust, and of {@code
 * p} the result hardly depends: the crossings are moved by a few percent of the ramp.
 *
 * @param rising the levels on rising light
 * @param falling the levels on falling light
 */
public record LevelCorrection(LevelPair rising, LevelPair falling) {
  /** Whether all four levels lie near enough to the nodes. */
  public boolean isAllowed() {
    return TwoLevelRule.allows(rising) && TwoLevelRule.allows(falling);
  }

  /**
   * The effective time of the main opening with every crossing moved to its node, in seconds.
   *
   * @param timed measured at the thresholds as they stand
   * @param openingPower the law of the opening by the light curve; 1 where it is not known
   * @param closingPower the law of the closing, likewise
   */
  public double effectiveSeconds(
      Exposure.Timed timed, TickRate rate, double openingPower, double closingPower) {
    Crossings at = timed.crossings();
    long origin = at.lowRiseTicks();
    double begin = nodes(0, rate.seconds(at.highRiseTicks() - origin), rising, openingPower);
    double end =
        nodes(
            rate.seconds(at.lowFallTicks() - origin),
            rate.seconds(at.highFallTicks() - origin),
            falling,
            closingPower);
    double lowGaps = rate.seconds(at.lowFallTicks() - at.lowRiseTicks()) - timed.widthLowSeconds();
    double highGaps =
        rate.seconds(at.highFallTicks() - at.highRiseTicks()) - timed.widthHighSeconds();
    return end - begin - (lowGaps + highGaps) / 2;
  }

  /** The mean of the times at the two nodes, in seconds from the first crossing. */
  private static double nodes(double low, double high, LevelPair seen, double power) {
    double from = Math.pow(seen.low(), 1 / power);
    double to = Math.pow(seen.high(), 1 / power);
    double middle =
        (Math.pow(LevelPair.GAUSS.low(), 1 / power) + Math.pow(LevelPair.GAUSS.high(), 1 / power))
            / 2;
    return low + (middle - from) / (to - from) * (high - low);
  }
}
