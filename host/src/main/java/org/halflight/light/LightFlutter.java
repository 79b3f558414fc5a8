package org.halflight.light;

/**
 * How steady light moves all the same: noise of single readings, and a slow ripple.
 *
 * @param noiseCounts standard deviation of a single reading of the ten-bit converter
 * @param rippleCounts amplitude of a ripple that is slow against a millisecond, as of 100 Hz
 */
public record LightFlutter(double noiseCounts, double rippleCounts) {
  /** Nothing moves, or nothing is known. */
  public static final LightFlutter NONE = new LightFlutter(0, 0);

  private static final int LEAST = 8;

  /** The weights of a third difference, 1 3 3 1, squared and added. */
  private static final double THIRD_DIFFERENCE = 20;

  public LightFlutter {
    if (!(noiseCounts >= 0 && rippleCounts >= 0)) {
      throw new IllegalArgumentException("not a flutter: " + noiseCounts + ", " + rippleCounts);
    }
  }

  /**
   * From means of a millisecond each, one after the other. Their third differences hold the noise
   * and hardly anything of a ripple at 100 Hz; what more they scatter about their mean is ripple.
   *
   * @param sums16 sums of 16 readings; fewer than eight tell nothing
   */
  public static LightFlutter of(int... sums16) {
    int n = sums16.length;
    if (n < LEAST) {
      return NONE;
    }
    double mean = 0;
    for (int sum : sums16) {
      mean += (double) sum / n;
    }
    double all = 0;
    for (int sum : sums16) {
      all += (sum - mean) * (sum - mean) / (n - 1);
    }
    double fast = 0;
    for (int i = 3; i < n; i++) {
      double third = sums16[i] - 3.0 * sums16[i - 1] + 3.0 * sums16[i - 2] - sums16[i - 3];
      fast += third * third / (n - 3) / THIRD_DIFFERENCE;
    }
    // A sum of cut readings scatters by the cutting too.
    double noise = Math.sqrt(Math.max(0, fast / LightBlock.READINGS - 1.0 / 12));
    double ripple = Math.sqrt(2 * Math.max(0, all - fast)) / LightBlock.READINGS;
    return new LightFlutter(noise, ripple);
  }
}
