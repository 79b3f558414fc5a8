package org.halflight.shuttermodel;

/** What can be turned on a model curtain shutter; a turn inwards is above zero. */
public enum CurtainScrew {
  /** Winds the spring of the first curtain. */
  FIRST_TENSION,
  /** Winds the spring of the second curtain. */
  SECOND_TENSION,
  /** The eccentric of the latch: widens the slit. */
  SLIT,
  /** Tightens the brake of the first curtain. */
  FIRST_BRAKE,
  /** Tightens the brake of the second curtain. */
  SECOND_BRAKE,
  /** Bends the flash contact, to close later. */
  CONTACT,
  /** The eccentric of the escapement: slower. */
  ESCAPEMENT
}
