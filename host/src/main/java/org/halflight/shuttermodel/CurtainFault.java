package org.halflight.shuttermodel;

import org.halflight.shuttermodel.CurtainCondition.Escapement;
import org.halflight.shuttermodel.CurtainCondition.Latch;

/**
 * One thing that is wrong with a model curtain shutter, of a size that can be seen. That such
 * faults exist is common practice; how large they are here is invented.
 */
public enum CurtainFault {
  /** Both curtains run in old oil. */
  BOTH_GUMMED,
  /** Both springs are tired. */
  BOTH_TIRED,
  /** The first curtain is slow. */
  FIRST_SLOW,
  /** The second curtain is slow. */
  SECOND_SLOW,
  /** The latch of the second curtain is sluggish. */
  LATE_LATCH,
  /** The slit is set too narrow. */
  NARROW_SLIT,
  /** The first curtain sticks after a rest. */
  FIRST_STICKS,
  /** The first curtain drags near the end. */
  FIRST_DRAGS,
  /** The second curtain drags near the end. */
  SECOND_DRAGS,
  /** The second curtain bounces. */
  SECOND_BOUNCES,
  /** The first curtain bounces. */
  FIRST_BOUNCES,
  /** The brake stops the second curtain within the frame. */
  BRAKED_TOO_EARLY,
  /** The pinion of the second curtain is a tooth out. */
  TOOTH_OUT,
  /** The escapement is dirty. */
  DIRTY_ESCAPEMENT,
  /** The escapement is not picked up. */
  NO_ESCAPEMENT,
  /** The escapement is out of place. */
  ESCAPEMENT_OUT,
  /** One step of the cam is off. */
  ONE_STEP_OFF,
  /** The change from slow to fast speeds comes late. */
  LATE_CHANGE_OVER,
  /** The flash contact closes before the frame is open. */
  EARLY_CONTACT,
  /** The flash contact closes too late. */
  LATE_CONTACT,
  /** The mirror is late. */
  LATE_RELEASE,
  /** The wind does not go home. */
  SHORT_WIND,
  /** The lever of B keeps hold of the second curtain now and then. */
  HELD_BY_B;

  /** A condition with this fault as well. */
  public CurtainCondition on(CurtainCondition c) {
    return switch (this) {
      case BOTH_GUMMED -> c.with(c.first().withGum(0.25, 0.6), c.second().withGum(0.25, 0.6));
      case BOTH_TIRED -> c.with(c.first().withTension(0.8), c.second().withTension(0.8));
      case FIRST_SLOW -> c.with(c.first().withTension(0.965), c.second());
      case SECOND_SLOW -> c.with(c.first(), c.second().withTension(0.965));
      case LATE_LATCH -> c.with(new Latch(0.25, 0.06, 0.4));
      case NARROW_SLIT -> c.with(new Latch(-0.25, 0.01, 0));
      case FIRST_STICKS -> c.with(c.first().withSticking(0.4), c.second());
      case FIRST_DRAGS -> c.with(c.first().withDrag(0.4), c.second());
      case SECOND_DRAGS -> c.with(c.first(), c.second().withDrag(0.4));
      case SECOND_BOUNCES -> c.with(c.first(), c.second().withBrake(0.1));
      case FIRST_BOUNCES -> c.with(c.first().withBrake(0.1), c.second());
      case BRAKED_TOO_EARLY -> c.with(c.first(), c.second().withBrake(5));
      case TOOTH_OUT -> c.with(c.first(), c.second().withShift(0.6));
      case DIRTY_ESCAPEMENT -> c.with(new Escapement(0.5, 0.12, 0.35, 0.05, true, 0, true));
      case NO_ESCAPEMENT -> c.with(new Escapement(0, 0.015, 0, 0, false, 0, true));
      case ESCAPEMENT_OUT -> c.with(new Escapement(0.4, 0.02, 0, 0, true, 0, true));
      case ONE_STEP_OFF -> c.with(new Escapement(0, 0.015, 0, 0, true, 0.6, true));
      case LATE_CHANGE_OVER -> c.with(new Escapement(0, 0.015, 0, 0, true, 0, false));
      case EARLY_CONTACT -> c.withContact(-2);
      case LATE_CONTACT -> c.withContact(6);
      case LATE_RELEASE -> c.withRelease(40, 12);
      case SHORT_WIND -> c.withChances(0.4, 0);
      case HELD_BY_B -> c.withChances(0, 0.3);
    };
  }
}
