package org.halflight.shuttermodel;

/**
 * The hole that five straight blades leave, a regular pentagon, in front of a round pupil of radius
 * 1 with the same centre.
 */
final class PentagonHole {
  private static final double HALF_ANGLE = Math.PI / 5;

  /** Above this apothem the corners stand outside the pupil. */
  private static final double CORNERS_AT_EDGE = StrictMath.cos(HALF_ANGLE);

  private static final double AREA_PER_SQUARE = 5 * StrictMath.tan(HALF_ANGLE) / Math.PI;

  private PentagonHole() {}

  /**
   * The part of the pupil's area that is clear. Exact: the whole pentagon while its corners are
   * inside the pupil, afterwards the pupil less five circular segments, which do not overlap.
   *
   * @param apothem distance of the blades' edges from the centre; 1 clears the pupil
   */
  static double clearFraction(double apothem) {
    if (apothem <= 0) {
      return 0;
    }
    if (apothem >= 1) {
      return 1;
    }
    if (apothem <= CORNERS_AT_EDGE) {
      return AREA_PER_SQUARE * apothem * apothem;
    }
    double segment = StrictMath.acos(apothem) - apothem * Math.sqrt(1 - apothem * apothem);
    return 1 - 5 * segment / Math.PI;
  }
}
