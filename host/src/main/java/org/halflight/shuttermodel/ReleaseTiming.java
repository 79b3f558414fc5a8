package org.halflight.shuttermodel;

/**
 * What else happens around a firing of a model shutter, all in milliseconds.
 *
 * @param pressToLightMillis from the release being pressed to first light
 * @param clickBeforeLightMillis from the sound of the film advance coming free to first light;
 *     below zero the advance frees late
 * @param contactAfterOpenMillis from fully open to the flash contact closing; it opens when the
 *     blades start to close
 * @param scatterMillis standard deviation of the first two
 */
public record ReleaseTiming(
    double pressToLightMillis,
    double clickBeforeLightMillis,
    double contactAfterOpenMillis,
    double scatterMillis) {
  /** Invented: a finger's press of 60 ms, an advance that frees by a hair, a prompt contact. */
  public static final ReleaseTiming INVENTED = new ReleaseTiming(60, 1.5, 0.1, 0.2);

  public ReleaseTiming {
    if (!(pressToLightMillis > 0)
        || !Double.isFinite(clickBeforeLightMillis)
        || !(contactAfterOpenMillis >= 0)
        || !(scatterMillis >= 0)) {
      throw new IllegalArgumentException(
          "pressing comes before the light, the contact not before fully open");
    }
  }
}
