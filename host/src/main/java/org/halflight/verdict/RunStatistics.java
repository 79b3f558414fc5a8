package org.halflight.verdict;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;

/**
 * One run: what went wrong first, then the statistics of each speed.
 *
 * @param phase of the run
 * @param troubles releases without a time, the gravest outcome first, slow to fast
 * @param speeds slow to fast
 */
public record RunStatistics(
    Phase phase, List<ShutterTrouble> troubles, List<SpeedStatistics> speeds) {
  /** Outcomes without a time, the gravest first. */
  static final List<Outcome> GRAVEST =
      List.of(Outcome.STUCK_OPEN, Outcome.DID_NOT_OPEN, Outcome.NEVER_FULLY_OPEN, Outcome.DOUBLE);

  public RunStatistics {
    troubles = List.copyOf(troubles);
    speeds = List.copyOf(speeds);
  }

  /** The statistics of a run. */
  public static RunStatistics of(RunSummary run) {
    return new RunStatistics(
        run.phase(), troubles(run), run.speeds().stream().map(SpeedStatistics::of).toList());
  }

  /** The releases of a run that came to something else than a time. */
  public static List<ShutterTrouble> troubles(RunSummary run) {
    Comparator<ShutterTrouble> gravest = Comparator.comparingInt(t -> gravity(t.outcome()));
    return run.speeds().stream()
        .flatMap(
            speed ->
                speed.outcomes().entrySet().stream()
                    .filter(outcome -> outcome.getKey() != Outcome.TIMED)
                    .map(outcome -> trouble(speed, outcome)))
        .sorted(gravest.thenComparingDouble(trouble -> -trouble.speed().literalSeconds()))
        .toList();
  }

  private static ShutterTrouble trouble(SpeedSummary speed, Map.Entry<Outcome, Integer> outcome) {
    return new ShutterTrouble(speed.speed(), outcome.getKey(), outcome.getValue(), speed.tries());
  }

  /** All outcomes without a time, the gravest first. */
  static List<Outcome> gravestFirst() {
    return Arrays.stream(Outcome.values())
        .filter(outcome -> outcome != Outcome.TIMED)
        .sorted(Comparator.comparingInt(RunStatistics::gravity))
        .toList();
  }

  /** A shutter that stays open spoils every picture, one that stays shut only its own. */
  private static int gravity(Outcome outcome) {
    int at = GRAVEST.indexOf(outcome);
    return at < 0 ? GRAVEST.size() : at;
  }
}
