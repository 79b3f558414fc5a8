package org.halflight.verdict;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.Exposure;
import org.halflight.session.AlikeFirings;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;

/**
 * How many releases at one speed came to what.
 *
 * @param tries those that say something about the shutter, the rejected ones not counted
 * @param outcomes how many of them came to what
 * @param rejected those that the person did not count, in order
 * @param unusable how many the rig could not record well
 * @param conditions special ones that they were made under
 * @param flapLight in how many of those of the mean the flap of the body let light through
 */
public record ReleaseCounts(
    int tries,
    Map<Outcome, Integer> outcomes,
    List<RejectedFiring> rejected,
    int unusable,
    UnderConditions conditions,
    int flapLight) {
  /** Of which none was rejected or unusable. */
  public ReleaseCounts(int tries, Map<Outcome, Integer> outcomes) {
    this(tries, outcomes, List.of(), 0, UnderConditions.NONE, 0);
  }

  public ReleaseCounts {
    rejected = List.copyOf(rejected);
  }

  /**
   * Of all firings of a speed.
   *
   * @param errorStops the error of a firing that has one
   */
  static ReleaseCounts of(
      List<FiringResult> firings,
      UnderConditions conditions,
      ToDoubleFunction<FiringResult> errorStops) {
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    firings.stream()
        .filter(FiringResult::isTry)
        .forEach(firing -> outcomes.merge(firing.outcome(), 1, Integer::sum));
    return new ReleaseCounts(
        outcomes.values().stream().mapToInt(Integer::intValue).sum(),
        outcomes,
        RejectedFiring.of(firings, errorStops),
        (int) firings.stream().filter(f -> f.outcome() == Outcome.UNUSABLE).count(),
        conditions,
        (int)
            AlikeFirings.of(firings).stream()
                .filter(FiringResult::isGood)
                .filter(ReleaseCounts::hasFlapLight)
                .count());
  }

  private static boolean hasFlapLight(FiringResult firing) {
    return firing.exposure() instanceof Exposure.Timed timed
        && timed.flags().contains(Exposure.Flag.FLAP_LIGHT);
  }
}
