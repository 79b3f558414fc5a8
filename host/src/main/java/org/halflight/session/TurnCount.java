package org.halflight.session;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * How far an adjuster is from where it was found.
 *
 * @param found its turns as found, where they were counted
 * @param change turns since, above 0 tighter or clockwise
 */
public record TurnCount(OptionalDouble found, double change) {
  /**
   * A spring that wants more than so many turns over what was found is not weak: something drags.
   * Our own limit.
   */
  public static final double MOST_OVER_FOUND = 0.25;

  /** Turns are counted by eye; sums of thirds and quarters are not exact. */
  private static final double ROUNDING = 1e-3;

  /** All that was found and turned, in order of time, by adjuster. */
  public static Map<Adjuster, TurnCount> of(List<AdjusterTurn> turns) {
    Map<Adjuster, TurnCount> counts = new EnumMap<>(Adjuster.class);
    for (AdjusterTurn each : turns) {
      TurnCount before =
          counts.getOrDefault(each.adjuster(), new TurnCount(OptionalDouble.empty(), 0));
      counts.put(
          each.adjuster(),
          each.isAsFound()
              ? new TurnCount(each.turns(), before.change)
              : new TurnCount(before.found, before.change + each.turns().orElse(0)));
    }
    return counts;
  }

  /** Whether any spring is wound too far. */
  public static boolean isTooFar(List<AdjusterTurn> turns) {
    return of(turns).entrySet().stream()
        .anyMatch(entry -> entry.getKey().isTension() && entry.getValue().isTooFar());
  }

  /** Its turns now, where they are known. */
  public OptionalDouble now() {
    return found.isPresent() ? OptionalDouble.of(found.getAsDouble() + change) : found;
  }

  /** Whether a spring is wound further than weakness would ask for. */
  public boolean isTooFar() {
    return change > MOST_OVER_FOUND + ROUNDING;
  }
}
