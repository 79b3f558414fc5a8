package org.halflight.session;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Optional;
import org.halflight.exposure.Crossings;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;
import org.halflight.signal.SampledLight;

/**
 * Finds the firing of a light curve. A curve comes behind the edges, before or after the quiet time
 * of its firing; that of a bounce meets no main opening and stays with the session file only.
 */
final class CurveWatch {
  /** Curves of openings that are no firing yet; a few are enough. */
  private static final int KEPT = 4;

  /** A curve belongs to one of the last firings, or to none. */
  private static final int FIRINGS_BACK = 10;

  private final Deque<SampledLight> waiting = new ArrayDeque<>();

  /** The firing that a curve belongs to; where there is none yet, the curve waits for it. */
  Optional<FiringResult> onCurve(
      SampledLight curve, FiringLog log, String rigSerial, long bootCount) {
    int newest = log.size() - 1;
    for (int i = newest; i >= 0 && i > newest - FIRINGS_BACK; i--) {
      FiringResult result = log.all().get(i);
      boolean sameStart =
          result.key().rigSerial().equals(rigSerial) && result.key().bootCount() == bootCount;
      if (sameStart
          && result.curve().isEmpty()
          && overlap(curve, result.firing(), result.exposure()) > 0) {
        return Optional.of(result);
      }
    }
    waiting.add(curve);
    if (waiting.size() > KEPT) {
      waiting.remove();
    }
    return Optional.empty();
  }

  /** The curve that has come before its firing settled. */
  Optional<SampledLight> of(Firing firing, Exposure exposure) {
    Optional<SampledLight> own =
        waiting.stream()
            .filter(curve -> overlap(curve, firing, exposure) > 0)
            .max(Comparator.comparingLong(curve -> overlap(curve, firing, exposure)));
    own.ifPresent(waiting::remove);
    waiting.removeIf(curve -> curve.endTicks() < firing.lastTicks());
    return own;
  }

  /** Ticks start anew. */
  void forget() {
    waiting.clear();
  }

  /** How much of the main opening of a firing a curve holds, in ticks. */
  private static long overlap(SampledLight curve, Firing firing, Exposure exposure) {
    if (curve.isOfCentre()
        && exposure instanceof Exposure.Timed timed
        && timed.flags().contains(Exposure.Flag.FLAP_LIGHT)) {
      // Light past a flap may last longer than the exposure, and has a curve of its own.
      Crossings main = timed.crossings();
      return new Pulse(main.lowRiseTicks(), main.lowFallTicks())
          .ticksWithin(curve.firstTicks(), curve.endTicks());
    }
    return Pulses.of(firing, curve.sensor()).pulses().stream()
        .max(Comparator.comparingLong(Pulse::ticks))
        .map(main -> main.ticksWithin(curve.firstTicks(), curve.endTicks()))
        .orElse(0L);
  }
}
