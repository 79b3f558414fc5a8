package org.halflight.shuttermodel;

/**
 * How the light grows while a leaf shutter opens: the fraction of the pupil that is clear after a
 * fraction of the opening time.
 *
 * <p>The same law describes a closing when it is read backwards, by the time that remains until
 * dark. A spring that drives both strokes from rest opens as {@link
 * BladeLaw#FIVE_BLADES_ACCELERATING} and closes as {@link BladeLaw#FIVE_BLADES_BRAKING}.
 */
public sealed interface OpeningLaw permits BladeLaw, PowerLaw {
  /**
   * The clear fraction of the pupil's area, 0 to 1, never falling.
   *
   * @param s the fraction of the opening time that has passed; below 0 counts as 0, above 1 as 1
   */
  double openFraction(double s);
}
