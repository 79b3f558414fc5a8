package org.halflight.exposure;

/**
 * The codes that set the two thresholds of the rig: code {@code c} of 0 to 255 stands for {@code (c
 * + 1) / 256} of the supply, which is {@code 4 (c + 1)} counts of the ten-bit converter.
 *
 * @param low code of the low threshold
 * @param high code of the high threshold
 */
public record ThresholdCodes(int low, int high) {
  /** The codes of a full rig after its start, as the line protocol has them. */
  public static final ThresholdCodes AFTER_START = new ThresholdCodes(0x2B, 0xA1);

  /** What light comes to. */
  public sealed interface Outcome {}

  /** The codes for the light. */
  public record Found(ThresholdCodes codes) implements Outcome {}

  /** No codes, and why. */
  public record Refused(LightLevels.Reason reason) implements Outcome {}

  private static final double COUNTS_PER_CODE = 4;

  public ThresholdCodes {
    if (low < 0 || low >= high || high > 255) {
      throw new IllegalArgumentException(
          "threshold codes must be 0 <= low < high <= 255, not " + low + " and " + high);
    }
  }

  /**
   * The codes nearest to the levels {@link LevelPair#GAUSS}.
   *
   * @param darkCounts sensor in the dark, in counts of the ten-bit converter
   * @param fullCounts sensor with the shutter held fully open, likewise
   */
  public static Outcome forLight(double darkCounts, double fullCounts) {
    return forLight(darkCounts, fullCounts, TripPoints.EXACT);
  }

  /**
   * The codes at which comparators switch nearest to those levels, in the mean of rising and
   * falling light.
   */
  public static Outcome forLight(double darkCounts, double fullCounts, TripPoints trips) {
    LightLevels.Reason refusal = LightLevels.refusal(darkCounts, fullCounts);
    if (refusal != null) {
      return new Refused(refusal);
    }
    double span = fullCounts - darkCounts;
    return new Found(
        new ThresholdCodes(
            code(darkCounts + LevelPair.GAUSS.low() * span - trips.low().offsetCounts()),
            code(darkCounts + LevelPair.GAUSS.high() * span - trips.high().offsetCounts())));
  }

  /** The same from sums of 16 readings, as light blocks and beats have them. */
  public static Outcome forLightSums(double darkSum16, double fullSum16) {
    return forLight(darkSum16 / 16, fullSum16 / 16);
  }

  /** What the low threshold should read, in counts. */
  public double lowCounts() {
    return COUNTS_PER_CODE * (low + 1);
  }

  /** What the high threshold should read, in counts. */
  public double highCounts() {
    return COUNTS_PER_CODE * (high + 1);
  }

  private static int code(double counts) {
    // A reading is the voltage cut down to whole counts, so it stands for half a count more.
    return (int) Math.round((counts + 0.5) / COUNTS_PER_CODE) - 1;
  }
}
