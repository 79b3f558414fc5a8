package org.halflight.job;

import org.halflight.stored.StoredWords;

/** How a shutter is built, as far as it matters to how it is fired and read. */
public enum ShutterKind {
  /** Leaves within the lens. */
  LEAF,
  /** Leaves behind the lens. */
  LEAF_BEHIND_LENS,
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

  /** As files store them. */
  public static final StoredWords<ShutterKind> WORDS =
      StoredWords.of(
          ShutterKind.class,
          shutterKind ->
              switch (shutterKind) {
                case LEAF -> "leaf";
                case LEAF_BEHIND_LENS -> "leaf-behind-lens";
                case CURTAIN_LONG_SIDE -> "curtain-long-side";
                case CURTAIN_SHORT_SIDE -> "curtain-short-side";
                case ROTARY -> "rotary";
                case OTHER -> "other";
                case UNKNOWN -> "unknown";
              });
}
