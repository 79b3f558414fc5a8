package org.halflight.session;

/** What became of a release. Each has exactly one. */
public enum Outcome {
  /** Opened, closed, and was timed. */
  TIMED,
  /** Opened and closed, but the leaves never opened fully: only bounds of the time are known. */
  NEVER_FULLY_OPEN,
  /** Opened and did not close by itself, or was not seen to close: a lower limit is known. */
  STUCK_OPEN,
  /** The release was pressed and no light came. */
  DID_NOT_OPEN,
  /** Opened twice. */
  DOUBLE,
  /** A sound or a contact only. */
  NOT_A_SHUTTER_EVENT,
  /** The record of the edges is damaged, so nothing is claimed about the shutter. */
  UNUSABLE;

  /** Whether the shutter did something that says how it is (and not the rig or the room). */
  public boolean isOfTheShutter() {
    return this != NOT_A_SHUTTER_EVENT && this != UNUSABLE;
  }
}
