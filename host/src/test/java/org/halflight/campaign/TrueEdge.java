package org.halflight.campaign;

/**
 * An edge as it happened.
 *
 * @param channel code of docs/protocol.md
 * @param high the level after it
 * @param ticks of the board, not cut to the width of the wire
 */
record TrueEdge(int channel, boolean high, long ticks) {
  static final int LOW = 0;
  static final int HIGH = 1;
  static final int OUTER_A = 2;
  static final int OUTER_B = 3;
  static final int CONTACT = 4;
  static final int CLICK = 5;
  static final int RELEASE = 6;

  static final long TICKS_PER_SECOND = 16_000_000;

  static long ticks(double seconds) {
    return Math.round(seconds * TICKS_PER_SECOND);
  }
}
