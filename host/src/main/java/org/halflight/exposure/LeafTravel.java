package org.halflight.exposure;

/**
 * What the travel of the leaves does to the time for which light stays above a level: the opening
 * and the closing both follow one {@link OpeningLaw}, so that the light is above level {@code q}
 * for
 *
 * <pre>W(q) = total - (opening + closing) q^(1/p)</pre>
 *
 * <p>and the effective time, the integral of {@code W} over all levels, is {@code total - (opening
 * + closing) p / (p + 1)}. True only where the leaves open fully. All times in seconds.
 */
public final class LeafTravel {
  private LeafTravel() {}

  /**
   * Opening plus closing time from the widths at two levels: {@code (W(q1) - W(q2)) / (q2^(1/p) -
   * q1^(1/p))}. Never below 0: a width that grows with the level is noise at a pulse without ramps.
   */
  public static double openingPlusClosingSeconds(
      double lowSeconds, double highSeconds, LevelPair levels, OpeningLaw law) {
    return Math.max(0, lowSeconds - highSeconds) / span(levels, law);
  }

  /** The time of one ramp, from the way between the two crossings on its side. Never below 0. */
  public static double rampSeconds(double crossingsSeconds, LevelPair levels, OpeningLaw law) {
    return Math.max(0, crossingsSeconds) / span(levels, law);
  }

  /**
   * Effective time from the width at a single level, corrected for leaf travel: {@code W(q) +
   * (opening + closing) (q^(1/p) - p / (p + 1))}.
   */
  public static double effectiveSeconds(
      double widthSeconds, double level, double openingPlusClosingSeconds, OpeningLaw law) {
    return widthSeconds + openingPlusClosingSeconds * (law.timeTo(level) - law.lostPart());
  }

  /** The width at another level of the same pulse; at level 0 the total time. */
  public static double widthSeconds(
      double widthSeconds,
      double level,
      double openingPlusClosingSeconds,
      OpeningLaw law,
      double atLevel) {
    return widthSeconds + openingPlusClosingSeconds * (law.timeTo(level) - law.timeTo(atLevel));
  }

  private static double span(LevelPair levels, OpeningLaw law) {
    return law.timeTo(levels.high()) - law.timeTo(levels.low());
  }
}
