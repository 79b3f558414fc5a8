package org.halflight.shuttermodel;

import org.halflight.signal.LightCurve;

/** What a model shutter did, with the truth that a measurement of it should find. */
public sealed interface ModelFiring {
  /**
   * It opened and closed.
   *
   * @param curve the light, first light at 0 s, bounce included
   * @param effectiveSeconds integral of the main opening alone
   * @param bounceShare integral of the bounce as a share of the main opening
   * @param openSeconds when the blades are open as far as they get
   * @param closingSeconds when they start to close
   * @param darkSeconds when the main opening ends
   * @param peak greatest fraction of full light
   */
  record Timed(
      LightCurve curve,
      double effectiveSeconds,
      double bounceShare,
      double openSeconds,
      double closingSeconds,
      double darkSeconds,
      double peak)
      implements ModelFiring {
    /** Whether the blades cleared the whole pupil. */
    public boolean openedFully() {
      return peak == 1;
    }
  }

  /**
   * Both curtains passed, or the first one alone; see {@link CurtainPass} for its truth.
   *
   * @param pass of the curtains; the release of the first at 0 s
   */
  record Curtains(CurtainPass pass) implements ModelFiring {}

  /** It opened and stays open until somebody closes it by hand. */
  record StuckOpen() implements ModelFiring {}

  /** The blades did not open. */
  record DidNotOpen() implements ModelFiring {}
}
