package org.halflight.shuttermodel;

/**
 * What else happens around a firing of a model shutter, all in milliseconds.
 *
 * @param pressToLightMillis from the release being pressed to first light
 * @param clickBeforeLightMillis from the sound of the film advance coming free to first light;
 *     below zero the advance frees late
 * @param scatterMillis standard deviation of the first two
 */
public record ReleaseTiming(
    double pressToLightMillis, double clickBeforeLightMillis, double scatterMillis) {
  /** Invented: a finger's press of 60 ms, an advance that frees by a hair. */
  public static final ReleaseTiming INVENTED = new ReleaseTiming(60, 1.5, 0.2);

  public ReleaseTiming {
    if (!(pressToLightMillis > 0)
        || !Double.isFinite(clickBeforeLightMillis)
        || !(scatterMillis >= 0)) {
      throw new IllegalArgumentException("pressing comes before the light");
    }
  }
}
