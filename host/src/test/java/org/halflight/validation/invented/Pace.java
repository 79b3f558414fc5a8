package org.halflight.validation.invented;

/**
 * How a person is asked to press.
 *
 * @param seconds how soon the stroke would be over if nothing stopped it
 * @param endPart the speed near the end, as a part of that before
 * @param steps in small steps with a pause after each
 * @param windNoticed how often the person notices that the wind moves, because it is turned lightly
 *     meanwhile; 0 where nothing turns it
 * @param rolled the fingertip lies on the body beside the button and is rolled on, which makes it
 *     four times as stiff
 */
public record Pace(
    double seconds, double endPart, boolean steps, double windNoticed, boolean rolled) {
  private static final double BY_HAND = 0.98;
  private static final double BY_EYE = 0.90;

  public static final Pace SQUEEZE = over(1.5);
  public static final Pace TAP = over(0.06);

  /** At much the same speed all the way. */
  public static Pace over(double seconds) {
    return new Pace(seconds, 1, false, 0, false);
  }

  /** Quickly as far as the button usually goes, and from there at a fifth of the speed. */
  public static Pace creeping(double seconds) {
    return new Pace(seconds, 0.2, false, 0, false);
  }

  public static Pace inSteps(double seconds) {
    return new Pace(seconds, 1, true, 0, false);
  }

  /** The other hand turns the wind lightly, and feels it move. */
  public Pace withHandOnWind() {
    return new Pace(seconds, endPart, steps, BY_HAND, rolled);
  }

  /** A rubber band turns the wind lightly, and the person sees it move. */
  public Pace withBandOnWind() {
    return new Pace(seconds, endPart, steps, BY_EYE, rolled);
  }

  public Pace rolledOn() {
    return new Pace(seconds, endPart, steps, windNoticed, true);
  }

  /** The wind that has left its notch cannot be locked again. */
  boolean turnsWind() {
    return windNoticed > 0;
  }
}
