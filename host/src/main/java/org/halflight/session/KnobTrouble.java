package org.halflight.session;

/** Why the knob contact tells nothing. */
public enum KnobTrouble {
  /** The firmware of this rig has no such input. */
  NOT_ON_THIS_RIG,
  /** It does, but the rig hears no click to hold it against. */
  NO_CLICKS,
  /** The wind turned, and the foil was on the wire all the time. */
  NEVER_OPENED
}
