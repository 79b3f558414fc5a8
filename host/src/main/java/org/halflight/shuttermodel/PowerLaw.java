package org.halflight.shuttermodel;

/**
 * Clear area as a power of time: 1 is {@link BladeLaw#AREA_LINEAR}, 2 is {@link
 * BladeLaw#ROUND_RADIUS_LINEAR}.
 *
 * @param exponent above zero
 */
public record PowerLaw(double exponent) implements OpeningLaw {
  public PowerLaw {
    if (!(exponent > 0) || !Double.isFinite(exponent)) {
      throw new IllegalArgumentException("the exponent is above zero, not " + exponent);
    }
  }

  @Override
  public double openFraction(double s) {
    return StrictMath.pow(Math.min(1, Math.max(0, s)), exponent);
  }
}
