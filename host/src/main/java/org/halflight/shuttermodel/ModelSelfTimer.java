package org.halflight.shuttermodel;

/**
 * The self-timer of a model shutter. All figures are invented.
 *
 * @param seconds from the press to first light in the mean, above zero
 * @param scatterSeconds standard deviation of that
 */
public record ModelSelfTimer(double seconds, double scatterSeconds) {
  /** Ten seconds, and even. */
  public static final ModelSelfTimer EVEN = new ModelSelfTimer(10, 0.06);

  /** Dry: slow, and no two releases alike. */
  public static final ModelSelfTimer UNEVEN = new ModelSelfTimer(11.4, 0.6);

  /** No model self-timer runs off in less than this share of its time. */
  private static final double LEAST_SHARE = 0.5;

  public ModelSelfTimer {
    if (!(seconds > 0) || !(scatterSeconds >= 0)) {
      throw new IllegalArgumentException("a self-timer takes a time above zero");
    }
  }

  /** One release: from the press to first light, in seconds. */
  public double runs(SeededDraws draws) {
    return Math.max(LEAST_SHARE * seconds, seconds + scatterSeconds * draws.normal());
  }
}
