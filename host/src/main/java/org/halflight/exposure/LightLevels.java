package org.halflight.exposure;

import org.halflight.light.Aim;
import org.halflight.signal.BoardTraits;
import org.jspecify.annotations.Nullable;

/**
 * Dark level, full-open light and the two thresholds of the centre sensor, all in counts of the
 * rig's ten-bit converter. Converter and thresholds hang on the same supply, so their ratios do not
 * depend on it.
 *
 * @param darkCounts sensor in the dark
 * @param fullCounts sensor with the shutter held fully open at the working stop
 * @param lowCounts voltage at the low comparator
 * @param highCounts voltage at the high comparator
 */
public record LightLevels(
    double darkCounts, double fullCounts, double lowCounts, double highCounts) {
  /** Above this the sensor or the converter may be at its end, and full light is not known. */
  public static final double SATURATED_COUNTS = Aim.SATURATED_COUNTS;

  /**
   * Full light less dark must be this at least: 200 counts (about 1 V), where two counts of error
   * of the converter are 1 % of full light.
   */
  public static final double LEAST_LIGHT_COUNTS = Aim.LEAST_LIGHT_COUNTS;

  /** More than this share of full light with the shutter closed is stray light or a leak. */
  public static final double GREATEST_DARK_SHARE = Aim.GREATEST_DARK_SHARE;

  /**
   * Full light that stands no more than this above dark (0.1 V) is no light: the shutter is closed.
   */
  private static final double CLOSED_COUNTS = 20;

  /** What light and thresholds come to. */
  public sealed interface Outcome {}

  /** The levels as fractions of full light. */
  public record Known(LevelPair levels) implements Outcome {}

  /** No levels, and why. */
  public record Refused(Reason reason) implements Outcome {}

  /** Why there are no levels. */
  public enum Reason {
    /** Full light is at the end of the scale: it may be more than it reads. */
    SATURATED,
    /** Full light is no brighter than dark. */
    FULL_NOT_ABOVE_DARK,
    /** Full light stands too little above dark. */
    LIGHT_TOO_LOW,
    /** Dark is too bright a part of full light. */
    DARK_TOO_BRIGHT,
    /** The low threshold is not below the high one. */
    THRESHOLDS_REVERSED,
    /** The low threshold is not above dark. */
    THRESHOLD_NOT_ABOVE_DARK,
    /** The high threshold is not below full light. */
    THRESHOLD_NOT_BELOW_FULL
  }

  public LightLevels {
    for (double counts : new double[] {darkCounts, fullCounts, lowCounts, highCounts}) {
      if (!(counts >= 0 && counts <= BoardTraits.FULL_SCALE_COUNTS)) {
        throw new IllegalArgumentException("not a reading of ten bits: " + counts);
      }
    }
  }

  /**
   * From the sums that the rig sends.
   *
   * @param darkSum16 sum of 16 readings of light in the dark
   * @param fullSum16 sum of 16 readings of light fully open
   * @param lowSum64 sum of 64 readings of the low threshold
   * @param highSum64 sum of 64 readings of the high threshold
   */
  public static LightLevels ofSums(
      double darkSum16, double fullSum16, double lowSum64, double highSum64) {
    return new LightLevels(darkSum16 / 16, fullSum16 / 16, lowSum64 / 64, highSum64 / 64);
  }

  /** A plateau as a share of full light, both less dark. */
  public double shareOfFull(double counts) {
    return (counts - darkCounts) / (fullCounts - darkCounts);
  }

  /**
   * The same thresholds with full light measured again, as the plateau of a slow firing does. Never
   * done unasked: a plateau may also be leaves that stop short.
   */
  public LightLevels withFull(double measuredCounts) {
    return new LightLevels(darkCounts, measuredCounts, lowCounts, highCounts);
  }

  /** All of it as it reads at a supply that is lower by a share, or higher. */
  public LightLevels times(double share) {
    double most = Math.min(share, BoardTraits.FULL_SCALE_COUNTS / fullCounts);
    return new LightLevels(
        darkCounts * most, fullCounts * most, lowCounts * most, highCounts * most);
  }

  /**
   * The light of a rig whose one level cannot be set: the high level is where the light curve is
   * asked for it, and no comparator stands there.
   *
   * @param levelCounts the level that edges are seen at
   */
  public static LightLevels withFixedLevel(
      double darkCounts, double fullCounts, double levelCounts) {
    return new LightLevels(
        darkCounts,
        fullCounts,
        levelCounts,
        darkCounts + LevelPair.GAUSS.high() * Math.max(0, fullCounts - darkCounts));
  }

  /** The thresholds as fractions of full light less dark. */
  public Outcome levels() {
    Reason light = refusal(darkCounts, fullCounts);
    if (light != null) {
      return new Refused(light);
    }
    if (lowCounts >= highCounts) {
      return new Refused(Reason.THRESHOLDS_REVERSED);
    }
    if (lowCounts <= darkCounts) {
      return new Refused(Reason.THRESHOLD_NOT_ABOVE_DARK);
    }
    if (highCounts >= fullCounts) {
      return new Refused(Reason.THRESHOLD_NOT_BELOW_FULL);
    }
    double span = fullCounts - darkCounts;
    return new Known(
        new LevelPair((lowCounts - darkCounts) / span, (highCounts - darkCounts) / span));
  }

  /** Why light alone allows no levels, or null where it does. */
  static @Nullable Reason refusal(double darkCounts, double fullCounts) {
    if (fullCounts > SATURATED_COUNTS) {
      return Reason.SATURATED;
    }
    if (fullCounts <= darkCounts + CLOSED_COUNTS) {
      return Reason.FULL_NOT_ABOVE_DARK;
    }
    if (darkCounts > GREATEST_DARK_SHARE * fullCounts) {
      return Reason.DARK_TOO_BRIGHT;
    }
    if (fullCounts - darkCounts < LEAST_LIGHT_COUNTS) {
      return Reason.LIGHT_TOO_LOW;
    }
    return null;
  }
}
