package org.halflight.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.halflight.session.AlikeFirings;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.stats.Sample;

/**
 * The special conditions of the firings of a speed.
 *
 * @param ofMean those that all firings of the mean share; empty where no two kinds of firings are
 *     alike and there is no mean
 * @param apart the errors, in stops, of timed firings that are not in the mean, by what they were
 *     made under, in order of firing
 */
public record UnderConditions(
    Optional<FiringConditions> ofMean, Map<FiringConditions, Sample> apart) {
  /** Nothing special. */
  public static final UnderConditions NONE =
      new UnderConditions(Optional.of(FiringConditions.NONE), Map.of());

  static UnderConditions of(List<FiringResult> firings, ToDoubleFunction<FiringResult> errorStops) {
    Optional<FiringConditions> ofMean = AlikeFirings.conditions(firings);
    Map<FiringConditions, List<Double>> apart = new LinkedHashMap<>();
    boolean rested = false;
    for (FiringResult firing : firings) {
      if (firing.rejection().isPresent() || firing.errorStops().isEmpty()) {
        continue;
      }
      FiringConditions its = firing.conditions().besideRest();
      // The first after rest is a figure of its own; a rest in the middle of a run makes another.
      boolean isApart = firing.afterRest() ? rested : !ofMean.equals(Optional.of(its));
      rested |= firing.afterRest();
      if (isApart) {
        apart
            .computeIfAbsent(
                firing.afterRest() ? its.with(FiringCondition.FIRST_AFTER_REST) : its,
                absent -> new ArrayList<>())
            .add(errorStops.applyAsDouble(firing));
      }
    }
    Map<FiringConditions, Sample> samples = new LinkedHashMap<>();
    apart.forEach((conditions, errors) -> samples.put(conditions, Sample.of(errors)));
    return new UnderConditions(ofMean, samples);
  }

  /** How many timed firings are not in the mean, the first after rest left aside. */
  public int leftOut() {
    return apart.values().stream().mapToInt(Sample::n).sum();
  }
}
