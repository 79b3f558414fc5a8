package org.halflight.rig;

/** What the reference LED of a rig is told to do. */
public enum ReferenceDrive {
  /** Stops and goes dark. */
  OFF(0),
  /** Square pulses, switched by the timer itself. */
  SQUARE(1),
  /** The same pulses behind a low-pass filter, so that light rises and falls slowly. */
  RAMPED(2),
  /** On until told otherwise, 10 s at most. */
  STEADY(3);

  private final int code;

  ReferenceDrive(int code) {
    this.code = code;
  }

  /** Its number on the wire. */
  public int code() {
    return code;
  }

  /** Whether it makes pulses that come to an end. */
  public boolean isPulsed() {
    return this == SQUARE || this == RAMPED;
  }
}
