package org.halflight.chart;

import java.awt.Color;
import java.awt.Font;
import org.halflight.session.Phase;

/**
 * Colours and size of letters of a picture. All colours of all pictures stand here.
 *
 * @param background behind everything
 * @param ink text and the line of no error
 * @param quietInk axes, notes and hatching
 * @param grid lines of the grid
 * @param tolerance the band of tolerance, translucent
 * @param asFound marks of the run as found
 * @param asLeft marks of the run as left
 * @param rest the first firing after rest
 * @param letterSize height of the letters of an axis, in pixels before scaling
 */
public record Theme(
    Color background,
    Color ink,
    Color quietInk,
    Color grid,
    Color tolerance,
    Color asFound,
    Color asLeft,
    Color rest,
    float letterSize) {
  private static final float USUAL_LETTERS = 14;
  private static final int PALE_ALPHA = 0x38;
  private static final int HATCH_ALPHA = 0x90;

  /** Small letters, as a part of the usual ones. No picture has smaller ones. */
  static final double SMALL = 0.93;

  /** No colour at all. */
  static final Color NONE = new Color(0, 0, 0, 0);

  /** Dark on white; all exports use it. */
  public static final Theme LIGHT =
      new Theme(
          Color.WHITE,
          new Color(0x1D2126),
          new Color(0x4C545D),
          new Color(0xE7E9EB),
          // Bluish green.
          new Color(0x00, 0x9E, 0x73, 0x26),
          // Vermillion, blue, reddish purple.
          new Color(0xD55E00),
          new Color(0x0072B2),
          new Color(0xB0558A),
          USUAL_LETTERS);

  /** Light on nearly black, for a dim workshop. */
  public static final Theme DARK =
      new Theme(
          new Color(0x14181C),
          new Color(0xE9EBEE),
          new Color(0xB9C0C7),
          new Color(0x2A3037),
          new Color(0x00, 0x9E, 0x73, 0x48),
          // Orange, sky blue, reddish purple: the lighter half of the palette.
          new Color(0xE69F00),
          new Color(0x56B4E9),
          new Color(0xCC79A7),
          USUAL_LETTERS);

  public Theme {
    if (!(letterSize > 0)) {
      throw new IllegalArgumentException("letters have a size above zero: " + letterSize);
    }
  }

  /** The same colours with letters of another height in pixels, as the desktop asks for. */
  public Theme withLetterSize(float pixels) {
    return new Theme(background, ink, quietInk, grid, tolerance, asFound, asLeft, rest, pixels);
  }

  /** All in grey: what is drawn is an example. Words stay as dark as quiet ones are. */
  Theme faded() {
    Color grey = mixed(quietInk, background);
    return new Theme(background, quietInk, quietInk, grid, grid, grey, grey, grey, letterSize);
  }

  private static Color mixed(Color one, Color other) {
    return new Color(
        (one.getRed() + other.getRed()) / 2,
        (one.getGreen() + other.getGreen()) / 2,
        (one.getBlue() + other.getBlue()) / 2);
  }

  /** The colour of the marks of a run. */
  Color of(Phase phase) {
    return switch (phase) {
      case AS_FOUND -> asFound;
      case ADJUSTING -> ink;
      case AS_LEFT -> asLeft;
    };
  }

  /** What its marks are filled with: only those of a run as left are. */
  Color filling(Phase phase) {
    return phase == Phase.AS_LEFT ? asLeft : background;
  }

  /** Words and lines over it show through. */
  static Color pale(Color colour) {
    return translucent(colour, PALE_ALPHA);
  }

  /** The slanted lines of an unsure zone. */
  Color hatching() {
    return translucent(quietInk, HATCH_ALPHA);
  }

  private static Color translucent(Color colour, int alpha) {
    return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), alpha);
  }

  Font letters() {
    return new Font(Font.SANS_SERIF, Font.PLAIN, 1).deriveFont(letterSize);
  }

  Font smallLetters() {
    return letters().deriveFont((float) (letterSize * SMALL));
  }

  Font headline() {
    return letters().deriveFont(Font.BOLD, letterSize * 1.3f);
  }
}
