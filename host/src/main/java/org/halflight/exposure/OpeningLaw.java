package org.halflight.exposure;

/**
 * How the hole of a leaf shutter grows: light {@code E = x^p} of full light after the part {@code
 * x} of the opening time, and the same backwards on closing.
 *
 * <p>Two levels cannot tell the laws apart. Effective time hardly depends on the law; total time
 * and everything that follows from it does, so such figures are given for both.
 */
public enum OpeningLaw {
  /** The area of the hole grows evenly: {@code p = 1}. */
  AREA_LINEAR(1),
  /** The radius of a round hole grows evenly, its area as the square: {@code p = 2}. */
  RADIUS_LINEAR(2);

  private final int power;

  OpeningLaw(int power) {
    this.power = power;
  }

  /** The power {@code p}. */
  public int power() {
    return power;
  }

  /**
   * The part of the opening time after which a level is reached: {@code q^(1/p)}.
   *
   * @param level fraction of full light, 0 to 1
   */
  public double timeTo(double level) {
    if (!(level >= 0 && level <= 1)) {
      throw new IllegalArgumentException("a level is 0 to 1, not " + level);
    }
    return this == AREA_LINEAR ? level : Math.sqrt(level);
  }

  /**
   * The part of the opening time that is lost to the exposure, {@code p / (p + 1)}: the integral of
   * {@link #timeTo} over all levels.
   */
  public double lostPart() {
    return power / (power + 1.0);
  }
}
