package org.halflight.session;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Which firings saw the light that was set: a plateau that is off puts all since the last good one
 * in doubt, and those that follow until a plateau is good again or the light is set anew.
 */
final class LightTrust {
  private int goodUpTo;

  /** Firings up to here are in doubt already; those that follow are when they settle. */
  private int doubtedUpTo;

  private boolean doubt;

  /** The light was set; firings of before were under another light. */
  void lightSet(int firingsSoFar) {
    goodUpTo = firingsSoFar;
    doubt = false;
  }

  /** Whether a firing with this plateau, or with none, is in doubt. */
  boolean doubts(OptionalDouble plateauShare) {
    return plateauShare.isPresent() ? PlateauWatch.isOff(plateauShare.getAsDouble()) : doubt;
  }

  /**
   * Takes the plateau of the last firing of the log.
   *
   * @return the firings that are in doubt by it and were not before, in order; empty when it is
   *     good
   */
  List<FiringResult> onPlateau(double plateauShare, FiringLog log) {
    if (!PlateauWatch.isOff(plateauShare)) {
      goodUpTo = log.size();
      doubt = false;
      return List.of();
    }
    doubt = true;
    int from = Math.max(goodUpTo, doubtedUpTo);
    doubtedUpTo = log.size();
    return log.all().subList(from, log.size()).stream()
        .filter(r -> !r.notes().lightDoubtful() && ReleaseTiming.hasLight(r.firing()))
        .toList();
  }

  /** Whether the light is in doubt now. */
  boolean isInDoubt() {
    return doubt;
  }
}
