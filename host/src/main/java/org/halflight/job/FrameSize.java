package org.halflight.job;

/**
 * The size of the picture on the film, to a micrometre.
 *
 * @param widthMicrometres along the film, above 0
 * @param heightMicrometres across the film, above 0
 */
public record FrameSize(long widthMicrometres, long heightMicrometres) {
  public FrameSize {
    if (widthMicrometres <= 0 || heightMicrometres <= 0) {
      throw new IllegalArgumentException(
          "a frame is wider and higher than 0: " + widthMicrometres + ", " + heightMicrometres);
    }
  }

  /** From millimetres, as people say them: 36 by 24. */
  public static FrameSize ofMillimetres(double width, double height) {
    return new FrameSize(Math.round(width * 1e3), Math.round(height * 1e3));
  }

  /** Along the film. */
  public double widthMillimetres() {
    return widthMicrometres / 1e3;
  }

  /** Across the film. */
  public double heightMillimetres() {
    return heightMicrometres / 1e3;
  }
}
