package org.halflight.verdict;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.session.FiringResult;
import org.halflight.session.ProfileUse;
import org.halflight.uncertainty.RigKnowledge;

/**
 * What a verdict rests on beside the firings.
 *
 * @param rig what is known of it
 * @param rule by which it is decided
 */
public record Judging(RigKnowledge rig, DecisionRule rule) {
  /** Any rig, a number of firings that was fixed beforehand. */
  public static final Judging UNCALIBRATED =
      new Judging(RigKnowledge.UNCALIBRATED, DecisionRule.FIXED_NUMBER);

  /** Errors of a model, without a rig. */
  public static final Judging OF_A_MODEL =
      new Judging(RigKnowledge.NO_RIG, DecisionRule.FIXED_NUMBER);

  public Judging {
    Objects.requireNonNull(rig);
    Objects.requireNonNull(rule);
  }

  /**
   * The same with what the profile says that all of some firings were measured with, where each of
   * them counts as calibrated by it. A judging of no rig stays.
   */
  Judging withProfileOf(List<FiringResult> firings) {
    Set<ProfileUse> uses =
        firings.stream().map(FiringResult::profileUse).collect(Collectors.toSet());
    return rig.equals(RigKnowledge.UNCALIBRATED)
            && uses.size() == 1
            && uses.iterator().next().isCalibrated()
        ? new Judging(RigKnowledge.of(uses.iterator().next().profile().orElseThrow()), rule)
        : this;
  }

  /** The same with light that nobody set. */
  Judging withLightUnset() {
    return new Judging(rig.withLightUnset(), rule);
  }
}
