package org.halflight.session;

/** Where in the work a run stands. */
public enum Phase {
  /** Before anything was touched; begins with the first firing after rest. */
  AS_FOUND,
  /** In the middle of the work. */
  ADJUSTING,
  /** After the work. */
  AS_LEFT
}
