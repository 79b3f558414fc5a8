package org.halflight.validation.invented;

/**
 * How a person is asked to press.
 *
 * @param seconds how soon the stroke would be over if nothing stopped it
 * @param endPart the speed near the end, as a part of that before
 * @param steps in small steps with a pause after each
 * @param hand the other hand turns the wind lightly, and feels when it moves
 * @param rolled the fingertip lies on the body beside the button and is rolled on, which makes it
 *     four times as stiff
 */
public record Pace(double seconds, double endPart, boolean steps, boolean hand, boolean rolled) {
  public static final Pace SQUEEZE = over(1.5);
  public static final Pace TAP = over(0.06);

  /** At much the same speed all the way. */
  public static Pace over(double seconds) {
    return new Pace(seconds, 1, false, false, false);
  }

  /** Quickly as far as the button usually goes, and from there at a fifth of the speed. */
  public static Pace creeping(double seconds) {
    return new Pace(seconds, 0.2, false, false, false);
  }

  public static Pace inSteps(double seconds) {
    return new Pace(seconds, 1, true, false, false);
  }

  public Pace withHandOnWind() {
    return new Pace(seconds, endPart, steps, true, rolled);
  }

  public Pace rolledOn() {
    return new Pace(seconds, endPart, steps, hand, true);
  }
}
