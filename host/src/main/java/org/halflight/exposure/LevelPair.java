package org.halflight.exposure;

/**
 * The two light levels at which the centre sensor is watched, as fractions of the light with the
 * shutter held fully open, less the dark level.
 *
 * @param low above 0 and below high
 * @param high below 1
 */
public record LevelPair(double low, double high) {
  /**
   * The nodes of two-point Gauss-Legendre quadrature on 0 to 1, {@code (1 -+ 1/sqrt 3) / 2}: with
   * these the mean of the two widths is the effective time for any width that is a cubic in the
   * level.
   */
  public static final LevelPair GAUSS =
      new LevelPair((1 - 1 / Math.sqrt(3)) / 2, (1 + 1 / Math.sqrt(3)) / 2);

  public LevelPair {
    if (!(low > 0 && low < high && high < 1)) {
      throw new IllegalArgumentException(
          "levels must be 0 < low < high < 1, not " + low + " and " + high);
    }
  }
}
