package org.halflight.job;

import java.util.Optional;
import java.util.Set;
import org.halflight.session.Adjuster;
import org.halflight.session.OwnTravel;
import org.halflight.speeds.MarkedSpeed;

/**
 * What is known of a camera by its curtains.
 *
 * @param ownTravel how long either curtain is to take, by the camera's own figure
 * @param xSpeed the fastest marked speed for electronic flash
 * @param adjusters what can be adjusted; all where nobody said
 */
public record CurtainCamera(
    Optional<OwnTravel> ownTravel, Optional<MarkedSpeed> xSpeed, Set<Adjuster> adjusters) {
  /** Nothing is known. */
  public static final CurtainCamera NOT_KNOWN =
      new CurtainCamera(Optional.empty(), Optional.empty(), Adjuster.ALL);

  public CurtainCamera {
    adjusters = Set.copyOf(adjusters);
  }
}
