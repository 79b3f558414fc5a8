package org.halflight.calibration;

/** On which side of the truth delays put the stamps of the host. */
public enum StampSide {
  /** The host stamps what it receives: never before it was sent. */
  HOST_LATE,
  /** The host stamps what it sends, the board what it receives: the host is never after. */
  HOST_EARLY
}
