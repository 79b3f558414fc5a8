package org.halflight.shuttermodel;

/**
 * The linkage of an invented camera: where in the stroke of its release button the film advance
 * unlocks and the shutter trips. All figures are invented.
 *
 * @param unlocksMillimetres from the button at rest to where the film advance unlocks
 * @param tripsMillimetres from there to where the shutter trips
 */
public record ButtonLinkage(double unlocksMillimetres, double tripsMillimetres) {
  /** From the button at rest to where it can go no further. */
  public static final double END_MILLIMETRES = 3;

  /** An advance that was unlocked no further than this locks again as the button is let go. */
  public static final double CATCH_MILLIMETRES = 0.05;

  /** The advance unlocks a hair ahead of the shutter, as it should. */
  public static final ButtonLinkage ONE_CLICK = new ButtonLinkage(1.6, 1.65);

  /** The advance unlocks far ahead of the shutter. */
  public static final ButtonLinkage ADVANCE_FIRST = new ButtonLinkage(1.6, 2.4);

  /** The shutter trips far ahead of the advance. */
  public static final ButtonLinkage SHUTTER_FIRST = new ButtonLinkage(2.2, 1.6);

  public ButtonLinkage {
    if (!inTheStroke(unlocksMillimetres) || !inTheStroke(tripsMillimetres)) {
      throw new IllegalArgumentException(
          "outside the stroke: " + unlocksMillimetres + ", " + tripsMillimetres);
    }
  }

  private static boolean inTheStroke(double millimetres) {
    return millimetres > 0 && millimetres < END_MILLIMETRES;
  }

  /** Whether an advance that was pressed so far stays unlocked once the button is let go. */
  public boolean staysUnlocked(double deepestMillimetres) {
    return deepestMillimetres > unlocksMillimetres + CATCH_MILLIMETRES;
  }
}
