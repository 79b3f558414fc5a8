package org.halflight.exposure;

import java.util.function.ToDoubleFunction;

/**
 * A figure that depends on how the hole grows, for both laws.
 *
 * @param areaLinear under {@link OpeningLaw#AREA_LINEAR}
 * @param radiusLinear under {@link OpeningLaw#RADIUS_LINEAR}
 */
public record ByLaw(double areaLinear, double radiusLinear) {
  /** Works a figure out for both laws. */
  public static ByLaw of(ToDoubleFunction<OpeningLaw> figure) {
    return new ByLaw(
        figure.applyAsDouble(OpeningLaw.AREA_LINEAR),
        figure.applyAsDouble(OpeningLaw.RADIUS_LINEAR));
  }

  /** The figure under one law. */
  public double under(OpeningLaw law) {
    return switch (law) {
      case AREA_LINEAR -> areaLinear;
      case RADIUS_LINEAR -> radiusLinear;
    };
  }

  /** The lesser of the two. */
  public double least() {
    return Math.min(areaLinear, radiusLinear);
  }

  /** The greater of the two. */
  public double greatest() {
    return Math.max(areaLinear, radiusLinear);
  }

  /** The mean of the two: a single figure where only one has room. */
  public double middle() {
    return (areaLinear + radiusLinear) / 2;
  }
}
