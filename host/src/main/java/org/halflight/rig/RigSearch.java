package org.halflight.rig;

import java.util.List;
import java.util.Optional;

/**
 * What came of looking for a rig.
 *
 * @param rig the rig that was meant, its link open; empty when there is none or more than one
 * @param outcomes what was found on each port that was tried
 * @param sentence how it went, for the person, with what to do
 */
public record RigSearch(Optional<OpenRig> rig, List<PortOutcome> outcomes, String sentence) {
  public RigSearch {
    outcomes = List.copyOf(outcomes);
  }
}
