package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;

/**
 * All speeds of one phase under one reading of the markings.
 *
 * @param phase of the firings
 * @param speeds slow to fast
 * @param behind the rigs and the repeated runs that they were made from
 */
public record RunSummary(Phase phase, List<SpeedSummary> speeds, RunsBehind behind) {
  public RunSummary {
    speeds = List.copyOf(speeds);
  }

  /** A run of which nothing else is known. */
  public RunSummary(Phase phase, List<SpeedSummary> speeds) {
    this(phase, speeds, RunsBehind.UNKNOWN);
  }

  /**
   * Sums up firings, phase by phase in the order of the work. Firings at no shown speed are left
   * out.
   *
   * @param tolerances the tolerance of each speed
   */
  public static List<RunSummary> of(
      List<FiringResult> firings, Function<MarkedSpeed, Tolerance> tolerances) {
    return of(firings, tolerances, DecisionBasis.UNCALIBRATED);
  }

  /**
   * Sums up firings as above, with what is known of the rig.
   *
   * @param tolerances the tolerance of each speed
   */
  public static List<RunSummary> of(
      List<FiringResult> firings,
      Function<MarkedSpeed, Tolerance> tolerances,
      DecisionBasis basis) {
    List<RunSummary> runs = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      // Two readings of the markings are never mixed.
      for (Reference reference : Reference.values()) {
        List<FiringResult> own =
            firings.stream()
                .filter(f -> f.phase().filter(phase::equals).isPresent())
                .filter(f -> f.reference() == reference && f.shown().isPresent())
                .toList();
        if (!own.isEmpty()) {
          runs.add(new RunSummary(phase, speeds(own, tolerances, basis), RunsBehind.of(own)));
        }
      }
    }
    return runs;
  }

  /** Whether every speed is held against what trade custom has for it. */
  public boolean holdsTradeCustom() {
    return speeds.stream()
        .allMatch(
            s ->
                s.tolerance().equals(Tolerance.THIRD)
                    || (s.equals(speeds.get(speeds.size() - 1))
                        && s.tolerance().equals(Tolerance.HALF)));
  }

  private static List<SpeedSummary> speeds(
      List<FiringResult> firings,
      Function<MarkedSpeed, Tolerance> tolerances,
      DecisionBasis basis) {
    Map<MarkedSpeed, List<FiringResult>> bySpeed = new LinkedHashMap<>();
    firings.forEach(
        f -> bySpeed.computeIfAbsent(f.shown().orElseThrow(), s -> new ArrayList<>()).add(f));
    ReboundOfRun rebound = ReboundOfRun.of(firings);
    return bySpeed.entrySet().stream()
        .sorted(Comparator.comparingDouble(speed -> -speed.getKey().literalSeconds()))
        .map(
            speed ->
                SpeedSummary.of(speed.getValue(), tolerances.apply(speed.getKey()), basis, rebound))
        .toList();
  }
}
