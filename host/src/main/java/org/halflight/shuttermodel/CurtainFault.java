package org.halflight.shuttermodel;

import java.util.function.UnaryOperator;
import org.halflight.shuttermodel.CurtainCondition.Escapement;
import org.halflight.shuttermodel.CurtainCondition.Latch;

/**
 * One thing that is wrong with a model curtain shutter, of a size that can be seen. That such
 * faults exist is common practice; how large they are here is invented.
 */
public enum CurtainFault {
  /** Both curtains run in old oil. */
  BOTH_GUMMED(c -> c.with(c.first().withGum(0.25, 0.6), c.second().withGum(0.25, 0.6))),
  /** Both springs are tired. */
  BOTH_TIRED(c -> c.with(c.first().withTension(0.8), c.second().withTension(0.8))),
  /** The first curtain is slow. */
  FIRST_SLOW(c -> c.with(c.first().withTension(0.965), c.second())),
  /** The second curtain is slow. */
  SECOND_SLOW(c -> c.with(c.first(), c.second().withTension(0.965))),
  /** The latch of the second curtain is sluggish. */
  LATE_LATCH(c -> c.with(new Latch(0.25, 0.06, 0.4))),
  /** The slit is set too narrow. */
  NARROW_SLIT(c -> c.with(new Latch(-0.25, 0.01, 0))),
  /** The first curtain sticks after a rest. */
  FIRST_STICKS(c -> c.with(c.first().withSticking(0.4), c.second())),
  /** The first curtain drags near the end. */
  FIRST_DRAGS(c -> c.with(c.first().withDrag(0.4), c.second())),
  /** The second curtain drags near the end. */
  SECOND_DRAGS(c -> c.with(c.first(), c.second().withDrag(0.4))),
  /** The second curtain bounces. */
  SECOND_BOUNCES(c -> c.with(c.first(), c.second().withBrake(0.1))),
  /** The first curtain bounces. */
  FIRST_BOUNCES(c -> c.with(c.first().withBrake(0.1), c.second())),
  /** The brake stops the second curtain within the frame. */
  BRAKED_TOO_EARLY(c -> c.with(c.first(), c.second().withBrake(5))),
  /** The pinion of the second curtain is a tooth out. */
  TOOTH_OUT(c -> c.with(c.first(), c.second().withShift(0.6))),
  /** The escapement is dirty. */
  DIRTY_ESCAPEMENT(c -> c.with(new Escapement(0.5, 0.12, 0.35, 0.05, true, 0, true))),
  /** The escapement is not picked up. */
  NO_ESCAPEMENT(c -> c.with(new Escapement(0, 0.015, 0, 0, false, 0, true))),
  /** The escapement is out of place. */
  ESCAPEMENT_OUT(c -> c.with(new Escapement(0.4, 0.02, 0, 0, true, 0, true))),
  /** One step of the cam is off. */
  ONE_STEP_OFF(c -> c.with(new Escapement(0, 0.015, 0, 0, true, 0.6, true))),
  /** The change from slow to fast speeds comes late. */
  LATE_CHANGE_OVER(c -> c.with(new Escapement(0, 0.015, 0, 0, true, 0, false))),
  /** The flash contact closes before the frame is open. */
  EARLY_CONTACT(c -> c.withContact(-2)),
  /** The flash contact closes too late. */
  LATE_CONTACT(c -> c.withContact(6)),
  /** The mirror is late. */
  LATE_RELEASE(c -> c.withRelease(40, 12)),
  /** The wind does not go home. */
  SHORT_WIND(c -> c.withChances(0.4, 0)),
  /** The lever of B keeps hold of the second curtain now and then. */
  HELD_BY_B(c -> c.withChances(0, 0.3));

  private final UnaryOperator<CurtainCondition> spoils;

  CurtainFault(UnaryOperator<CurtainCondition> spoils) {
    this.spoils = spoils;
  }

  /** A condition with this fault as well. */
  public CurtainCondition on(CurtainCondition condition) {
    return spoils.apply(condition);
  }
}
