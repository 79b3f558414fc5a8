package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.session.RunSetup;
import org.halflight.session.SpringSettling;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SinceAdjustment;
import org.halflight.verdict.SpeedSummary;

/** What the runs of a view come to, each judged by what it was set up for. */
final class ViewedRuns {
  private ViewedRuns() {}

  /** The latest run of each phase, in the order of the work. */
  static List<RunSummary> latest(BenchView view) {
    List<RunSummary> runs = new ArrayList<>();
    for (int run : latestOfPhases(view).values()) {
      runs.addAll(RunSummary.of(firings(view, run), tolerances(view, run), basis(view, run)));
    }
    return runs;
  }

  /** The firings of the latest run of each phase. */
  static List<FiringResult> latestFirings(BenchView view) {
    Map<Phase, Integer> latest = latestOfPhases(view);
    return view.results().stream()
        .filter(f -> f.phase().map(latest::get).equals(Optional.of(f.run())))
        .toList();
  }

  /** The firings of a speed in the latest run that fired it. */
  static List<FiringResult> latestAt(BenchView view, MarkedSpeed speed) {
    List<FiringResult> all =
        view.results().stream()
            .filter(f -> f.shown().equals(Optional.of(speed)) && f.phase().isPresent())
            .toList();
    int run = all.stream().mapToInt(FiringResult::run).max().orElse(0);
    return all.stream().filter(f -> f.run() == run).toList();
  }

  /** What these come to, since the last adjustment; empty where there are none. */
  static Optional<SpeedSummary> at(BenchView view, MarkedSpeed speed) {
    List<FiringResult> latest = latestAt(view, speed);
    List<FiringResult> firings = SinceAdjustment.of(latest, lastMark(view, latest));
    if (firings.isEmpty()) {
      return Optional.empty();
    }
    int run = firings.get(0).run();
    List<FiringResult> ofRun = view.results().stream().filter(f -> f.run() == run).toList();
    return Optional.of(
        SpeedSummary.of(
            firings,
            tolerances(view, run).apply(speed),
            basis(view, run),
            ReboundOfRun.of(SinceAdjustment.of(ofRun, lastMark(view, latest)))));
  }

  /** The number of the last firing that an adjustment has made count no more; 0 for none. */
  static int lastMark(BenchView view, List<FiringResult> firings) {
    return firings.isEmpty()
        ? 0
        : SpringSettling.lastUncounted(firings.get(0).run(), view.marks(), view.results());
  }

  /** What the speeds of a run are held against. */
  static Function<MarkedSpeed, Tolerance> tolerances(BenchView view, int run) {
    return setup(view, run)::tolerance;
  }

  /** The dial of the camera, where the run is on it. */
  static Dial dial(BenchView view, RunSetup setup) {
    return view.dial()
        .filter(dial -> dial.speeds().containsAll(setup.order()))
        .orElseGet(setup::markings);
  }

  /** What a run was set up for; its firings exist, so it does. */
  static RunSetup setup(BenchView view, int run) {
    return view.runs().get(run - 1);
  }

  private static DecisionBasis basis(BenchView view, int run) {
    return DecisionBasis.of(setup(view, run), RigKnowledge.UNCALIBRATED);
  }

  private static List<FiringResult> firings(BenchView view, int run) {
    return view.results().stream().filter(f -> f.run() == run).toList();
  }

  private static Map<Phase, Integer> latestOfPhases(BenchView view) {
    Map<Phase, Integer> latest = new EnumMap<>(Phase.class);
    view.results()
        .forEach(f -> f.phase().ifPresent(phase -> latest.merge(phase, f.run(), Math::max)));
    return latest;
  }
}
