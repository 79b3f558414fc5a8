package org.halflight.session;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.LightLevels;

/**
 * Firings whose light curve stayed below full light: once full light is measured after them and is
 * still what it was, their curve decides.
 */
final class FullLightWait {
  private final Set<FiringKey> waiting = new LinkedHashSet<>();

  /** Takes what is known of a firing now. */
  void onFiring(FiringResult result) {
    if (result.decidedBy().equals(Optional.of(DecidedBy.FULL_LIGHT_AGAIN))) {
      waiting.add(result.key());
    } else {
      waiting.remove(result.key());
    }
  }

  /** Whether a firing waits. */
  boolean isAny() {
    return !waiting.isEmpty();
  }

  /**
   * Full light was measured.
   *
   * @param lightCounts full light less the dark level, in counts of the converter
   * @param own the firing whose plateau it is; one that stands below full light tells nothing of
   *     itself
   * @return the firings that are seen otherwise now, in order of firing
   */
  List<FiringResult> measured(double lightCounts, Optional<FiringKey> own, FiringLog log) {
    List<FiringResult> changed = new ArrayList<>();
    for (FiringKey key : List.copyOf(waiting)) {
      Optional<FiringResult> result = log.find(key).filter(r -> r.curve().isPresent());
      if (own.equals(Optional.of(key)) || result.isEmpty()) {
        continue;
      }
      FiringCurve curve = result.get().curve().get();
      LightLevels set = curve.light().orElseThrow();
      double share = lightCounts / (set.fullCounts() - set.darkCounts());
      FiringResult now = result.get().withCurve(curve.withFullLightAfter(OptionalDouble.of(share)));
      changed.add(now);
      onFiring(now);
    }
    return changed;
  }

  /** What comes from here on says nothing of these firings any more. */
  void forget() {
    waiting.clear();
  }
}
