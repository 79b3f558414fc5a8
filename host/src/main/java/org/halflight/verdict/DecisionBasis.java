package org.halflight.verdict;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.profile.ClockRate;
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
public record DecisionBasis(
    RigKnowledge rig, DecisionRule rule, Measurand measurand, OptionalInt planned) {
  /** Any rig, a number of firings that was fixed beforehand. */
  public static final DecisionBasis UNCALIBRATED =
      new DecisionBasis(RigKnowledge.UNCALIBRATED, DecisionRule.FIXED_NUMBER);

  /** Errors of a model, without a rig. */
  public static final DecisionBasis OF_A_MODEL =
      new DecisionBasis(RigKnowledge.NO_RIG, DecisionRule.FIXED_NUMBER);

  /** On the mean of a setting, of which as many firings were timed as were meant to be. */
  public DecisionBasis(RigKnowledge rig, DecisionRule rule) {
    this(rig, rule, Measurand.MEAN_OF_SETTING, OptionalInt.empty());
  }

  /** As a run was set up. Adjusting has no number of firings that it is to come to. */
  public static DecisionBasis of(RunSetup setup, RigKnowledge rig) {
    boolean counted =
        !setup.criteria().untilDecided() && !setup.isQuick() && setup.phase() != Phase.ADJUSTING;
    return new DecisionBasis(
        rig,
        setup.isQuick()
            ? DecisionRule.QUICK
            : setup.criteria().untilDecided()
                ? DecisionRule.UNTIL_DECIDED
                : DecisionRule.FIXED_NUMBER,
        setup.criteria().measurand(),
        counted ? OptionalInt.of(setup.firingsPerSpeed()) : OptionalInt.empty());
  }

  /** Whether so many timed firings are fewer than were fixed beforehand. */
  boolean isShort(int firings) {
    return planned.isPresent() && firings < planned.getAsInt();
  }

  /**
   * The same with what is known of the rig that all of some firings were measured with: what their
   * profile says, where each of them counts as calibrated by it, the rate that the pings of the
   * session told, where each of them was corrected by one, and the test of the panel, where each of
   * them came after one. A basis without a rig stays.
   */
  DecisionBasis withRigOf(List<FiringResult> firings) {
    if (!rig.equals(RigKnowledge.UNCALIBRATED) || firings.isEmpty()) {
      return this;
    }
    List<ProfileUse> uses = firings.stream().map(FiringResult::profileUse).toList();
    Set<ProfileUse> profiles =
        uses.stream().map(ProfileUse::calibration).collect(Collectors.toSet());
    ProfileUse any = uses.get(0);
    RigKnowledge known =
        profiles.size() == 1 && any.isCalibrated()
            ? RigKnowledge.of(any.profile().orElseThrow(), leastSpanCounts(uses))
            : rig;
    RigKnowledge clocked = leastSureClock(uses).map(known::withLiveClock).orElse(known);
    OptionalDouble fall = leastEvenPanel(uses);
    return new DecisionBasis(
        fall.isPresent() ? clocked.withPanelTested(fall.getAsDouble()) : clocked,
        rule,
        measurand,
        planned);
  }

  /** Empty where a firing was made before the panel was tested: then the allowance stays. */
  private static OptionalDouble leastEvenPanel(List<ProfileUse> uses) {
    return uses.stream().anyMatch(use -> use.state().panelFall().isEmpty())
        ? OptionalDouble.empty()
        : uses.stream().mapToDouble(use -> use.state().panelFall().getAsDouble()).max();
  }

  /** In the dimmest light a count is the greatest share. */
  private static OptionalDouble leastSpanCounts(List<ProfileUse> uses) {
    return uses.stream()
        .map(use -> use.state().lightSpanCounts())
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .min();
  }

  /** Empty where a firing was not corrected by a live rate: then the allowance stays for all. */
  private static Optional<ClockRate> leastSureClock(List<ProfileUse> uses) {
    List<ClockRate> clocks =
        uses.stream().flatMap(use -> use.state().liveClock().stream()).toList();
    return clocks.size() < uses.size()
        ? Optional.empty()
        : clocks.stream().max(Comparator.comparingDouble(ClockRate::standardUncertaintyPpm));
  }

  /** The same with light that nobody set. */
  DecisionBasis withLightUnset() {
    return new DecisionBasis(rig.withLightUnset(), rule, measurand, planned);
  }
}
