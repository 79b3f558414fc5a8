package org.halflight.verdict;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;

/**
 * A firing that the person does not count. It is in no figure, and stays visible.
 *
 * @param number counts the firings of the session
 * @param outcome what came of it
 * @param errorStops its error, above zero is slow; empty where it has no time
 * @param reason why it does not count
 */
public record RejectedFiring(
    int number, Outcome outcome, OptionalDouble errorStops, String reason) {
  static List<RejectedFiring> of(
      List<FiringResult> firings, ToDoubleFunction<FiringResult> errorStops) {
    return firings.stream()
        .filter(firing -> firing.rejection().isPresent())
        .map(
            firing ->
                new RejectedFiring(
                    firing.number(),
                    firing.outcome(),
                    firing.errorStops().isPresent()
                        ? OptionalDouble.of(errorStops.applyAsDouble(firing))
                        : OptionalDouble.empty(),
                    firing.rejection().orElseThrow()))
        .toList();
  }
}
