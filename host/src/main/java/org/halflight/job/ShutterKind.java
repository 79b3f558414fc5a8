package org.halflight.job;

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
  UNKNOWN
}
