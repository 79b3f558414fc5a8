package org.halflight.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.halflight.session.AlikeFirings;
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
    firings.stream()
        .filter(f -> f.isGood() && f.errorStops().isPresent())
        .filter(f -> !ofMean.equals(Optional.of(f.conditions().besideRest())))
        .forEach(
            f ->
                apart
                    .computeIfAbsent(f.conditions().besideRest(), c -> new ArrayList<>())
                    .add(errorStops.applyAsDouble(f)));
    Map<FiringConditions, Sample> samples = new LinkedHashMap<>();
    apart.forEach((conditions, errors) -> samples.put(conditions, Sample.of(errors)));
    return new UnderConditions(ofMean, samples);
  }
}
