package org.halflight.shuttermodel;

/**
 * How long an ordinary release of a model shutter takes, in milliseconds.
 *
 * @param pressToLightMillis from the release being pressed to first light
 * @param scatterMillis its standard deviation
 */
public record ReleaseTiming(double pressToLightMillis, double scatterMillis) {
  /** Invented: a finger's press of 60 ms. */
  public static final ReleaseTiming INVENTED = new ReleaseTiming(60, 0.2);

  public ReleaseTiming {
    if (!(pressToLightMillis > 0) || !(scatterMillis >= 0)) {
      throw new IllegalArgumentException("pressing comes before the light");
    }
  }
}
