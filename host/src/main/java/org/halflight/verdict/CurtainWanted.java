package org.halflight.verdict;

import java.util.Optional;
import org.halflight.session.OwnTravel;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;

/**
 * What is known of a camera with curtains before it is fired.
 *
 * @param travel its own figure of the travel; empty where nobody gave one, and then travels are not
 *     judged, only their difference
 * @param flashSpeed the fastest speed at which a flash lights the whole frame; empty where not
 *     known
 */
public record CurtainWanted(Optional<OwnTravel> travel, Optional<MarkedSpeed> flashSpeed) {
  /** Nothing is known. */
  public static final CurtainWanted UNKNOWN = new CurtainWanted(Optional.empty(), Optional.empty());

  /** As the set-up of a run has it. */
  public static CurtainWanted of(RunSetup setup) {
    return new CurtainWanted(
        setup.criteria().get(RunOption.OWN_TRAVEL), setup.criteria().get(RunOption.X_SPEED));
  }
}
