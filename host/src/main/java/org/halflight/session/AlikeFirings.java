package org.halflight.session;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/**
 * Which firings of a speed go into its mean. Those under special conditions are kept apart, unless
 * all of the speed were made under the same.
 */
public final class AlikeFirings {
  private record SpeedOfPhase(
      Optional<Phase> phase, Reference reference, Optional<MarkedSpeed> speed) {}

  private AlikeFirings() {}

  /**
   * The conditions that the firings of a mean have in common; empty where there is no mean, because
   * every firing is special and they are not alike.
   *
   * @param firings of one speed
   */
  public static Optional<FiringConditions> conditions(List<FiringResult> firings) {
    Set<FiringConditions> all =
        firings.stream()
            .filter(FiringResult::answersTheQuestion)
            .map(AlikeFirings::of)
            .collect(Collectors.toSet());
    if (all.isEmpty() || all.contains(FiringConditions.NONE)) {
      return Optional.of(FiringConditions.NONE);
    }
    return all.size() == 1 ? all.stream().findFirst() : Optional.empty();
  }

  /**
   * The firings of one speed that are alike, whatever they came to, in their order. Those that
   * neither have a time nor could have one are always among them.
   */
  public static List<FiringResult> of(List<FiringResult> firings) {
    Optional<FiringConditions> common = conditions(firings);
    return firings.stream()
        .filter(f -> !f.answersTheQuestion() || common.equals(Optional.of(of(f))))
        .toList();
  }

  /** The keys of the firings that go into a mean, of any speeds and phases. */
  public static Set<FiringKey> inMeans(List<FiringResult> firings) {
    Map<SpeedOfPhase, List<FiringResult>> bySpeed = new LinkedHashMap<>();
    firings.forEach(
        f ->
            bySpeed
                .computeIfAbsent(
                    new SpeedOfPhase(f.phase(), f.reference(), f.shown()), s -> new ArrayList<>())
                .add(f));
    return bySpeed.values().stream()
        .flatMap(ofSpeed -> of(ofSpeed).stream())
        .filter(FiringResult::isGood)
        .map(FiringResult::key)
        .collect(Collectors.toSet());
  }

  /** What sets a firing apart; that it was the first after rest does so anyway. */
  static FiringConditions of(FiringResult firing) {
    return firing.conditions().besideRest();
  }
}
