package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.halflight.extratest.Holds;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.Stage.Bulb;
import org.halflight.verdict.Stage.Fired;
import org.halflight.verdict.Stage.Seen;

/** The stages of assembly among the runs of a session or a visit. */
public final class StageRuns {
  private StageRuns() {}

  /**
   * The assemblies of a session: stages that follow one another, each compared with the one before.
   *
   * @param firings of the session, in order
   * @param runs what each run was set up for, in order
   */
  public static List<AssemblyStages> of(List<FiringResult> firings, List<RunSetup> runs) {
    List<StageOf> each = new ArrayList<>();
    for (int run = 1; run <= runs.size(); run++) {
      int number = run;
      RunSetup setup = runs.get(run - 1);
      each.add(
          new StageOf(
              setup, stage(setup, firings.stream().filter(f -> f.run() == number).toList())));
    }
    return of(each);
  }

  /**
   * A run and the stage that it is.
   *
   * @param setup what it was set up for
   * @param stage empty for another run, and where nothing was fired: that stage was none
   */
  public record StageOf(RunSetup setup, Optional<Stage> stage) {}

  /** The same of runs wherever they are kept, in order. */
  public static List<AssemblyStages> of(List<StageOf> runs) {
    List<AssemblyStages> assemblies = new ArrayList<>();
    List<Stage> stages = new ArrayList<>();
    Optional<RunSetup> before = Optional.empty();
    for (StageOf run : runs) {
      if (before.filter(run.setup()::isStageOf).isEmpty()) {
        end(stages, assemblies);
      }
      before = Optional.of(run.setup());
      run.stage().ifPresent(stages::add);
    }
    end(stages, assemblies);
    return assemblies;
  }

  private static void end(List<Stage> stages, List<AssemblyStages> assemblies) {
    if (!stages.isEmpty()) {
      assemblies.add(AssemblyStages.of(stages));
      stages.clear();
    }
  }

  /** What a run with these firings is as a stage; empty for another run, and without a firing. */
  public static Optional<Stage> stage(RunSetup setup, List<FiringResult> firings) {
    List<FiringResult> tries =
        firings.stream().filter(f -> setup.isStage()).filter(FiringResult::isTry).toList();
    if (tries.isEmpty()) {
      return Optional.empty();
    }
    Comparator<MarkedSpeed> byTime = Comparator.comparingDouble(MarkedSpeed::exactSeconds);
    List<MarkedSpeed> order = setup.order();
    // Blades that never open fully have time enough at the slow speed; at the top speed they may.
    Fired slow =
        fired(tries, order.stream().max(byTime).orElseThrow(), f -> f.outcome() == Outcome.TIMED);
    Fired top =
        fired(tries, order.stream().min(byTime).orElseThrow(), f -> f.errorStops().isPresent());
    boolean lightSet =
        tries.stream()
            .filter(f -> f.errorStops().isPresent())
            .allMatch(f -> f.levels().isPresent());
    return Optional.of(new Stage(setup.assembly(), lightSet, bulb(tries), slow, top));
  }

  private static Fired fired(
      List<FiringResult> tries, MarkedSpeed speed, Predicate<FiringResult> works) {
    List<FiringResult> its =
        tries.stream().filter(f -> f.shown().equals(Optional.of(speed))).toList();
    return Fired.of(
        speed,
        its.stream().filter(works).flatMapToDouble(f -> f.errorStops().stream()).boxed().toList(),
        (int) its.stream().filter(works.negate()).count());
  }

  /**
   * The first press is a tap, the last one is held; a rig without its release sees no letting go.
   */
  private static Optional<Bulb> bulb(List<FiringResult> tries) {
    List<Holds.Shot> shots =
        tries.stream()
            .filter(f -> f.untimedTest().equals(Optional.of(UntimedTest.B)))
            .map(Holds::shot)
            .toList();
    if (shots.isEmpty()) {
      return Optional.empty();
    }
    Holds.Shot tap = shots.get(0);
    Holds.Shot held = shots.get(shots.size() - 1);
    boolean closes =
        tap.outcome() == Outcome.OPENS_HOLDS_CLOSES || tap.outcome() == Outcome.DID_NOT_HOLD;
    Seen hold =
        shots.size() < 2
            ? Seen.NOT_KNOWN
            : held.outcome() == Outcome.OPENS_HOLDS_CLOSES || held.outcome() == Outcome.STUCK_OPEN
                ? Seen.RIGHT
                : Seen.WRONG;
    Seen drop =
        shots.stream().anyMatch(Holds.Shot::hangs)
            ? Seen.WRONG
            : shots.stream().anyMatch(s -> s.closingDelaySeconds().isPresent())
                ? Seen.RIGHT
                : Seen.NOT_KNOWN;
    return Optional.of(new Bulb(closes ? Seen.RIGHT : Seen.WRONG, hold, drop));
  }
}
