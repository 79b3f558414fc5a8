package org.halflight.verdict;

import java.util.Objects;
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

  /** The same with light that nobody set. */
  Judging withLightUnset() {
    return new Judging(rig.withLightUnset(), rule);
  }
}
