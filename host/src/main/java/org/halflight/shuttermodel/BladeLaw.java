package org.halflight.shuttermodel;

/**
 * Five ways for blades to clear a round pupil of radius 1, as idealised shapes and motions. Real
 * shutters lie somewhere between them.
 */
public enum BladeLaw implements OpeningLaw {
  /** The clear area grows evenly with time. */
  AREA_LINEAR,
  /** A round hole whose radius grows evenly with time. */
  ROUND_RADIUS_LINEAR,
  /** Five straight blades that move at constant speed. */
  FIVE_BLADES_CONSTANT,
  /** Five straight blades that start from rest and move ever faster: way as the square of time. */
  FIVE_BLADES_ACCELERATING,
  /** Five straight blades that start fast and come to rest at fully open. */
  FIVE_BLADES_BRAKING;

  @Override
  public double openFraction(double s) {
    double time = Math.min(1, Math.max(0, s));
    return switch (this) {
      case AREA_LINEAR -> time;
      case ROUND_RADIUS_LINEAR -> time * time;
      case FIVE_BLADES_CONSTANT -> PentagonHole.clearFraction(time);
      case FIVE_BLADES_ACCELERATING -> PentagonHole.clearFraction(time * time);
      case FIVE_BLADES_BRAKING -> PentagonHole.clearFraction(1 - (1 - time) * (1 - time));
    };
  }
}
