package org.halflight.verdict;

import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.session.FiringResult;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.ProfileUse;
import org.halflight.session.RunSetup;
import org.halflight.uncertainty.RigKnowledge;

/**
 * What a verdict rests on beside the firings.
 *
 * @param rig what is known of it
 * @param rule by which it is decided
 * @param measurand what is decided on
 * @param planned how many firings of each speed were fixed beforehand, where that is known
 */
public record Judging(
    RigKnowledge rig, DecisionRule rule, Measurand measurand, OptionalInt planned) {
  /** Any rig, a number of firings that was fixed beforehand. */
  public static final Judging UNCALIBRATED =
      new Judging(RigKnowledge.UNCALIBRATED, DecisionRule.FIXED_NUMBER);

  /** Errors of a model, without a rig. */
  public static final Judging OF_A_MODEL =
      new Judging(RigKnowledge.NO_RIG, DecisionRule.FIXED_NUMBER);

  public Judging {
    Objects.requireNonNull(rig);
    Objects.requireNonNull(rule);
    Objects.requireNonNull(measurand);
    Objects.requireNonNull(planned);
  }

  /** On the mean of a setting, of which as many firings were timed as were meant to be. */
  public Judging(RigKnowledge rig, DecisionRule rule) {
    this(rig, rule, Measurand.MEAN_OF_SETTING, OptionalInt.empty());
  }

  /** As a run was set up. Adjusting has no number of firings that it is to come to. */
  public static Judging of(RunSetup setup, RigKnowledge rig) {
    boolean counted = !setup.aim().untilDecided() && setup.phase() != Phase.ADJUSTING;
    return new Judging(
        rig,
        setup.aim().untilDecided() ? DecisionRule.UNTIL_DECIDED : DecisionRule.FIXED_NUMBER,
        setup.aim().measurand(),
        counted ? OptionalInt.of(setup.firingsPerSpeed()) : OptionalInt.empty());
  }

  /** Whether so many timed firings are fewer than were fixed beforehand. */
  boolean isShort(int firings) {
    return planned.isPresent() && firings < planned.getAsInt();
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
        ? new Judging(
            RigKnowledge.of(uses.iterator().next().profile().orElseThrow()),
            rule,
            measurand,
            planned)
        : this;
  }

  /** The same with light that nobody set. */
  Judging withLightUnset() {
    return new Judging(rig.withLightUnset(), rule, measurand, planned);
  }
}
