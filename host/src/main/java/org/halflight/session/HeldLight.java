package org.halflight.session;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LightLevels;

/**
 * The light of a shutter that was held open at B, where nobody had set the light: full light from
 * the beats meanwhile, dark from those with the shutter shut, and the thresholds where they stood.
 */
public sealed interface HeldLight {
  /** How long it is to be held, in seconds. */
  double HOLD_SECONDS = 3;

  /** Fewer beats, of 0.26 s each, are too short a look: half of what is asked for. */
  int LEAST_BEATS = 6;

  /** Light that moves by more than this share of itself is none to go by, as with a light curve. */
  double STEADY_SHARE = 0.02;

  /** Full light is known: earlier firings under the same light can be worked out. */
  record Known(LightLevels light) implements HeldLight {}

  /** It was let go too soon. */
  record TooShort() implements HeldLight {}

  /** The light moved while it was held. */
  record NotSteady(double share) implements HeldLight {}

  /** The light, or where the thresholds stood in it, allows no levels. */
  record Refused(LightLevels.Reason reason) implements HeldLight {}

  /** Where the thresholds stood, or the dark level, is not known. */
  record NotKnown() implements HeldLight {}

  /**
   * What was seen.
   *
   * @param plateau light of each beat while it was fully open, in counts of the converter
   * @param dark the same with the shutter shut
   * @param thresholds where they stood, where that is known
   */
  static HeldLight of(List<Double> plateau, List<Double> dark, Optional<ThresholdsAt> thresholds) {
    if (plateau.size() < LEAST_BEATS) {
      return new TooShort();
    }
    if (dark.isEmpty() || thresholds.isEmpty()) {
      return new NotKnown();
    }
    double full = plateau.stream().mapToDouble(each -> each).average().orElseThrow();
    double shut = middle(dark);
    double moved = (Collections.max(plateau) - Collections.min(plateau)) / Math.max(1, full - shut);
    if (full - shut >= LightLevels.LEAST_LIGHT_COUNTS && moved > STEADY_SHARE) {
      return new NotSteady(moved);
    }
    LightLevels light = thresholds.get().in(shut, full);
    return light.levels() instanceof LightLevels.Refused refused
        ? new Refused(refused.reason())
        : new Known(light);
  }

  /** The middle one: a beat behind a bounce may still hold some of its light. */
  private static double middle(List<Double> all) {
    return all.stream().sorted().skip((all.size() - 1) / 2).findFirst().orElseThrow();
  }

  /** Where both thresholds stand, in counts of the converter. */
  record ThresholdsAt(double lowCounts, double highCounts) {
    /** The one level of a rig that cannot set it; there is no high one. */
    static ThresholdsAt fixed(double counts) {
      return new ThresholdsAt(counts, Double.NaN);
    }

    private LightLevels in(double darkCounts, double fullCounts) {
      return Double.isNaN(highCounts)
          ? LightLevels.withFixedLevel(darkCounts, fullCounts, lowCounts)
          : new LightLevels(darkCounts, fullCounts, lowCounts, highCounts);
    }
  }
}
