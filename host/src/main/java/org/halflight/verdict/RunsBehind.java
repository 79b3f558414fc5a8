package org.halflight.verdict;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.session.AlikeFirings;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.Sample;

/**
 * What a summary was made from: with which rigs, and whether the same run was made several times.
 *
 * @param rigs serial numbers; empty where they are not known
 * @param repeats errors of each repeated run by itself, in stops, in the order of the runs; empty
 *     where there was one run, or nobody knows
 */
public record RunsBehind(Set<String> rigs, List<Map<MarkedSpeed, Sample>> repeats) {
  /** Fewer firings of a speed than this repeat no run. */
  static final int LEAST_FIRINGS = 3;

  /** Nothing is known of it. */
  public static final RunsBehind UNKNOWN = new RunsBehind(Set.of(), List.of());

  public RunsBehind {
    rigs = Set.copyOf(rigs);
    repeats = List.copyOf(repeats);
  }

  /** One run of these rigs. */
  public static RunsBehind ofRigs(Set<String> rigs) {
    return new RunsBehind(rigs, List.of());
  }

  /**
   * Of firings of one phase, in order of firing. Runs of adjusting repeat nothing, since each tries
   * something else.
   */
  static RunsBehind of(List<FiringResult> firings) {
    Set<String> rigs = new HashSet<>();
    List<Map<MarkedSpeed, List<Double>>> runs = new ArrayList<>();
    Set<FiringKey> inMeans = AlikeFirings.inMeans(firings);
    FiringResult last = null;
    for (FiringResult firing : firings) {
      rigs.add(firing.key().rigSerial());
      // Firings are counted from 1 again in the next session.
      if (last == null || last.run() != firing.run() || firing.number() <= last.number()) {
        runs.add(new HashMap<>());
      }
      last = firing;
      if (inMeans.contains(firing.key())) {
        runs.get(runs.size() - 1)
            .computeIfAbsent(firing.shown().orElseThrow(), speed -> new ArrayList<>())
            .add(firing.errorStops().orElseThrow());
      }
    }
    boolean adjusting =
        firings.stream().anyMatch(f -> f.phase().filter(Phase.ADJUSTING::equals).isPresent());
    return runs.size() < 2 || adjusting
        ? ofRigs(rigs)
        : new RunsBehind(rigs, runs.stream().map(RunsBehind::samples).toList());
  }

  private static Map<MarkedSpeed, Sample> samples(Map<MarkedSpeed, List<Double>> errors) {
    Map<MarkedSpeed, Sample> samples = new HashMap<>();
    errors.forEach((speed, values) -> samples.put(speed, Sample.of(values)));
    return samples;
  }

  /** Whether two runs were not made with one and the same rig. */
  boolean isOtherRigThan(RunsBehind other) {
    Set<String> all = new HashSet<>(rigs);
    all.addAll(other.rigs);
    return !rigs.isEmpty() && !other.rigs.isEmpty() && all.size() > 1;
  }

  /**
   * The errors of a speed, run by run; all together where the run was not repeated. Fewer than
   * {@value #LEAST_FIRINGS} firings are no run of their own: somebody has fired on.
   */
  List<Sample> at(SpeedSummary speed) {
    List<Sample> runs = new ArrayList<>();
    for (Map<MarkedSpeed, Sample> run : repeats) {
      Sample errors = run.getOrDefault(speed.speed(), Sample.of());
      int last = runs.size() - 1;
      if (last >= 0 && Math.min(errors.n(), runs.get(last).n()) < LEAST_FIRINGS) {
        runs.set(last, Sample.joined(List.of(runs.get(last), errors)));
      } else {
        runs.add(errors);
      }
    }
    return runs.size() < 2 ? List.of(speed.errors()) : runs;
  }

  /**
   * What the repeated runs show in place of the usual allowance, by the speeds that each of them
   * fired twice or more; empty where they do not suffice.
   */
  Optional<MeanAllowance> allowance() {
    Set<MarkedSpeed> speeds = new HashSet<>();
    repeats.forEach(run -> speeds.addAll(run.keySet()));
    List<MarkedSpeed> all =
        speeds.stream()
            .filter(
                speed ->
                    repeats.stream().allMatch(run -> run.getOrDefault(speed, Sample.of()).n() >= 2))
            .toList();
    return MeanAllowance.ofRepeatedRuns(
        repeats.stream().map(run -> all.stream().map(run::get).toList()).toList());
  }
}
