package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;

/**
 * All speeds of one phase.
 *
 * @param phase of the firings
 * @param speeds slow to fast
 */
public record RunSummary(Phase phase, List<SpeedSummary> speeds) {
  public RunSummary {
    speeds = List.copyOf(speeds);
  }

  /**
   * Sums up firings, phase by phase in the order of the work. Firings at no shown speed are left
   * out.
   *
   * @param tolerances the tolerance of each speed
   */
  public static List<RunSummary> of(
      List<FiringResult> firings, Function<MarkedSpeed, Tolerance> tolerances) {
    List<RunSummary> runs = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      Map<MarkedSpeed, List<FiringResult>> bySpeed = new LinkedHashMap<>();
      firings.stream()
          .filter(f -> f.phase().filter(phase::equals).isPresent() && f.shown().isPresent())
          .forEach(f -> bySpeed.computeIfAbsent(f.shown().get(), s -> new ArrayList<>()).add(f));
      if (!bySpeed.isEmpty()) {
        runs.add(
            new RunSummary(
                phase,
                bySpeed.entrySet().stream()
                    .sorted(Comparator.comparingDouble(speed -> -speed.getKey().literalSeconds()))
                    .map(
                        speed ->
                            SpeedSummary.of(speed.getValue(), tolerances.apply(speed.getKey())))
                    .toList()));
      }
    }
    return runs;
  }
}
