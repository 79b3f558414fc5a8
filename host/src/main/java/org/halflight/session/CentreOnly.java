package org.halflight.session;

import org.halflight.speeds.ShutterKind;

/** Why the shutter of a run that has curtains is measured at the centre of the frame only. */
public enum CentreOnly {
  /** The rig has one sensor. */
  ONE_SENSOR,
  /** No outer sensor has seen light. */
  OUTER_DARK,
  /** The size of the frame or the way of the curtains was not said, or no sensor can be there. */
  NO_GEOMETRY,
  /** Its light does not come through two curtains that run one after the other. */
  OTHER_KIND;

  static CentreOnly why(RunSetup setup, boolean hasOuterSensors) {
    if (!hasOuterSensors) {
      return ONE_SENSOR;
    }
    if (setup.curtainGeometry().isPresent()) {
      return OUTER_DARK;
    }
    return setup.shutter().kind() == ShutterKind.ROTARY ? OTHER_KIND : NO_GEOMETRY;
  }
}
