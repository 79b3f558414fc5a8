package org.halflight.exposure;

/** How what uncovers and covers the film moved in one firing. */
public sealed interface Travel permits BladeTravel, CurtainTravel {
  /** From first to full light at the centre of the frame, in seconds. */
  ByLaw openingSeconds();

  /** From full to last light at the centre of the frame, in seconds. */
  ByLaw closingSeconds();

  /** Opening plus closing time under a law, in seconds. */
  default double openingPlusClosingSeconds(OpeningLaw law) {
    return openingSeconds().under(law) + closingSeconds().under(law);
  }
}
