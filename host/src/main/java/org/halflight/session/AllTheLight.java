package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.ReboundSeen;

/**
 * All the light of a timed firing, each part by what sees it best: the main opening by what decides
 * its time; a rebound by edges where it passed the high level, else by the firing's own light curve
 * where that looked long enough, else by the low level alone, else by what other firings of its run
 * showed.
 *
 * @param mainSeconds effective time of the main opening, in seconds
 * @param earlySeconds light before it, in seconds of full light
 * @param reboundSeconds light after it, likewise
 * @param boundSeconds how far off early light and rebound may be together, plus or minus, likewise
 */
public record AllTheLight(
    double mainSeconds, double earlySeconds, double reboundSeconds, double boundSeconds) {

  /**
   * Of a firing.
   *
   * @param firing whose exposure is timed, or whose light curve decides
   * @param ofRun the rebound that its run showed for its speed, in seconds of full light; empty
   *     where nobody looked
   */
  public static AllTheLight of(FiringResult firing, OptionalDouble ofRun) {
    if (firing.decidedBy().equals(Optional.of(DecidedBy.CURVE))) {
      return byCurve(firing, ofRun);
    }
    Exposure.Timed timed = (Exposure.Timed) firing.exposure();
    Set<Flag> flags = timed.flags();
    Optional<ReboundSeen> curve = firing.reboundSeen();
    boolean isLate = flags.contains(Flag.LATE_LIGHT);
    boolean isWeighed = isLate && !flags.contains(Flag.LOW_LEVEL_ONLY);
    // Edges can only miss light, and so can a curve that does not look for long.
    double early =
        Math.max(timed.earlySeconds(), curve.map(ReboundSeen::beforeSeconds).orElse(0.0));
    double byEdges = timed.reboundSeconds();
    double byCurve = curve.map(ReboundSeen::afterSeconds).orElse(0.0);
    double rebound;
    double share;
    if (isWeighed) {
      rebound = byEdges;
      share = Exposure.BOTH_LEVELS_BOUND;
    } else if (curve.filter(ReboundSeen::looked).isPresent()) {
      rebound = byCurve;
      share = 0;
    } else {
      double others = isLate ? 0 : ofRun.orElse(0);
      rebound = Math.max(others, Math.max(byEdges, byCurve));
      share = Exposure.LOW_LEVEL_ONLY_BOUND;
    }
    // What the light curve corrects is the main opening.
    double corrected = firing.effectiveSeconds().orElse(timed.effectiveSeconds());
    return new AllTheLight(
        timed.mainSeconds() + corrected - timed.effectiveSeconds(),
        early,
        rebound,
        timed.outsideBoundShare() * early + share * rebound);
  }

  private static AllTheLight byCurve(FiringResult firing, OptionalDouble ofRun) {
    ReboundSeen seen = firing.reboundSeen().orElseThrow();
    double main =
        firing.effectiveSeconds().orElseThrow() - seen.beforeSeconds() - seen.afterSeconds();
    if (seen.looked()) {
      return new AllTheLight(main, seen.beforeSeconds(), seen.afterSeconds(), 0);
    }
    double rebound = Math.max(seen.afterSeconds(), ofRun.orElse(0));
    return new AllTheLight(
        main, seen.beforeSeconds(), rebound, Exposure.LOW_LEVEL_ONLY_BOUND * rebound);
  }

  /** The effective time: all of it, in seconds. */
  public double seconds() {
    return mainSeconds + earlySeconds + reboundSeconds;
  }

  /** Light before the main opening as a share of its own. */
  public double earlyShare() {
    return earlySeconds / mainSeconds;
  }

  /** Light after the main opening as a share of its own. */
  public double reboundShare() {
    return reboundSeconds / mainSeconds;
  }
}
