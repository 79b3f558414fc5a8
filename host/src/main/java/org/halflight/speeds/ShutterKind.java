package org.halflight.speeds;

import java.util.List;
import org.halflight.stored.StoredWords;

/** How a shutter is built, as far as it matters to how it is fired and read. */
public enum ShutterKind {
  /** Leaves within the lens. */
  LEAF,
  /** Leaves behind the lens. */
  LEAF_BEHIND_LENS,
  /**
   * Leaves in a camera whose lens is looked through: they are open for viewing, and close when the
   * release is pressed; a flap or mirror lifts, and then they make the exposure.
   */
  LEAF_REFLEX,
  /** Cloth or metal curtains that run along the long side of the frame. */
  CURTAIN_LONG_SIDE,
  /** Blades or curtains that run along the short side of the frame. */
  CURTAIN_SHORT_SIDE,
  /** A turning disc or sector. */
  ROTARY,
  /** Something else. */
  OTHER,
  /** Nobody has said yet. */
  UNKNOWN;

  /** The built-in dial that only shutters with curtains have. */
  private static final String CURTAIN_DIAL = "curtain";

  /** As files store them. */
  public static final StoredWords<ShutterKind> WORDS =
      StoredWords.of(
          ShutterKind.class,
          shutterKind ->
              switch (shutterKind) {
                case LEAF -> "leaf";
                case LEAF_BEHIND_LENS -> "leaf-behind-lens";
                case LEAF_REFLEX -> "leaf-reflex";
                case CURTAIN_LONG_SIDE -> "curtain-long-side";
                case CURTAIN_SHORT_SIDE -> "curtain-short-side";
                case ROTARY -> "rotary";
                case OTHER -> "other";
                case UNKNOWN -> "unknown";
              });

  /** Whether two curtains run over the frame, so that their travels can be measured. */
  public boolean hasTwoCurtains() {
    return this == CURTAIN_LONG_SIDE || this == CURTAIN_SHORT_SIDE;
  }

  /**
   * Whether a slit or an edge moves over the picture, so that nothing that is worked out from the
   * travel of leaves holds. Where nobody has said the kind, the dials tell it.
   *
   * @param dials names of the dials that are known of the shutter
   */
  public boolean isCurtain(String... dials) {
    return switch (this) {
      case CURTAIN_LONG_SIDE, CURTAIN_SHORT_SIDE, ROTARY -> true;
      case LEAF, LEAF_BEHIND_LENS, LEAF_REFLEX, OTHER -> false;
      case UNKNOWN -> List.of(dials).contains(CURTAIN_DIAL);
    };
  }
}
