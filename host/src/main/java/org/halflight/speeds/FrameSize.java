package org.halflight.speeds;

import java.util.Optional;
import java.util.OptionalDouble;

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

  /** The size that a person wrote, such as {@code 36 x 24} or {@code 36x24 mm}; under 1 m. */
  public static Optional<FrameSize> find(String typed) {
    String[] sides = typed.strip().split("\\s*[xX*\u00d7]\\s*", -1);
    if (sides.length != 2) {
      return Optional.empty();
    }
    OptionalDouble width = Millimetres.find(sides[0]);
    OptionalDouble height = Millimetres.find(sides[1]);
    return width.isPresent()
            && height.isPresent()
            && Math.max(width.getAsDouble(), height.getAsDouble()) < 1000
        ? Optional.of(ofMillimetres(width.getAsDouble(), height.getAsDouble()))
        : Optional.empty();
  }

  /** As {@link #find} reads it. */
  public String text() {
    return Millimetres.text(widthMillimetres()) + " x " + Millimetres.text(heightMillimetres());
  }

  /** Along the film. */
  public double widthMillimetres() {
    return widthMicrometres / 1e3;
  }

  /** Across the film. */
  public double heightMillimetres() {
    return heightMicrometres / 1e3;
  }

  /**
   * How far curtains run over it, in mm.
   *
   * @param kind which way they run; empty where nothing runs from edge to edge, or nobody said how
   */
  public OptionalDouble alongTravelMillimetres(ShutterKind kind) {
    return switch (kind) {
      case CURTAIN_LONG_SIDE ->
          OptionalDouble.of(Math.max(widthMillimetres(), heightMillimetres()));
      case CURTAIN_SHORT_SIDE ->
          OptionalDouble.of(Math.min(widthMillimetres(), heightMillimetres()));
      case LEAF, LEAF_BEHIND_LENS, LEAF_REFLEX, ROTARY, OTHER, UNKNOWN -> OptionalDouble.empty();
    };
  }
}
