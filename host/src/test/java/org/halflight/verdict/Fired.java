package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;

/** Runs put together by hand, for tests. */
public final class Fired {
  private final Phase phase;
  private final List<SpeedSummary> speeds = new ArrayList<>();

  private Fired(Phase phase) {
    this.phase = phase;
  }

  public static Fired asFound() {
    return new Fired(Phase.AS_FOUND);
  }

  public static Fired asLeft() {
    return new Fired(Phase.AS_LEFT);
  }

  /** A speed with timed firings of these errors. */
  public Fired at(String speed, double... errors) {
    return at(speed, Reference.EXACT, Map.of(), OptionalDouble.empty(), errors);
  }

  /** A speed that also hung so often. */
  public Fired hanging(String speed, int times, double... errors) {
    return at(
        speed, Reference.EXACT, Map.of(Outcome.STUCK_OPEN, times), OptionalDouble.empty(), errors);
  }

  public Fired at(
      String speed,
      Reference reference,
      Map<Outcome, Integer> others,
      OptionalDouble afterRest,
      double... errors) {
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    outcomes.putAll(others);
    int timed = errors.length + (afterRest.isPresent() ? 1 : 0);
    if (timed > 0) {
      outcomes.put(Outcome.TIMED, timed);
    }
    speeds.add(
        new SpeedSummary(
            MarkedSpeed.parse(speed),
            reference,
            phase,
            new ReleaseCounts(
                outcomes.values().stream().mapToInt(Integer::intValue).sum(), outcomes),
            Sample.of(errors),
            afterRest,
            Tolerance.THIRD,
            HowMeasured.BY_A_MODEL));
    return this;
  }

  public RunSummary run() {
    return new RunSummary(phase, speeds);
  }

  /** Normally distributed errors that have exactly this mean and standard deviation. */
  public static double[] errors(long seed, int n, double mean, double sd) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] raw = random.doubles(n).map(u -> Math.log(u / (1 - u))).toArray();
    double rawMean = Arrays.stream(raw).average().orElseThrow();
    double rawSd =
        Math.sqrt(Arrays.stream(raw).map(v -> (v - rawMean) * (v - rawMean)).sum() / (n - 1));
    return Arrays.stream(raw).map(v -> mean + sd * (v - rawMean) / rawSd).toArray();
  }
}
