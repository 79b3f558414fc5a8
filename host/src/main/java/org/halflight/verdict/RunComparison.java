package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Figure;
import org.halflight.stats.Holm;
import org.halflight.stats.MeanAllowance;
import org.halflight.uncertainty.UncertaintyBudget;

/**
 * Two runs of one camera: what changed, and how sure that is.
 *
 * <p>All shifts (each speed's and the one that the whole dial has in common) are tested together by
 * Holm's method at {@link #SHIFT_ALPHA}, changes of scatter of the slow-speed train's speeds
 * together and of the others together at {@link #GROUP_SCATTER_ALPHA}, changes of scatter of single
 * speeds at {@link #SCATTER_ALPHA}. The three add up to less than one in twenty, and so the chance
 * that anything at all is called changed where nothing is stays below that, as long as firings
 * depend on one another no more than {@link MeanAllowance} allows.
 *
 * @param before the earlier run
 * @param after the later run
 * @param speeds those fired in both runs, slow to fast
 * @param onlyBefore speeds fired in the earlier run only
 * @param onlyAfter speeds fired in the later run only
 * @param common the shift that the speeds have in common
 * @param commonAdjustedP its chance after Holm
 * @param slowScatter scatter of the speeds that the slow-speed train governs
 * @param fastScatter scatter of the others
 * @param setups what was unlike in the set-ups
 * @param otherRig whether another rig measured the later run; the shifts then have what both rigs
 *     may be off by in them
 * @param byRepeatedRuns whether repeated runs of this camera took the place of the usual allowance
 * @param readings whether the markings were read differently; the shifts are then held against the
 *     reading of the earlier run
 */
public record RunComparison(
    RunSummary before,
    RunSummary after,
    List<SpeedComparison> speeds,
    List<MarkedSpeed> onlyBefore,
    List<MarkedSpeed> onlyAfter,
    Optional<CommonShift> common,
    OptionalDouble commonAdjustedP,
    ScatterComparison slowScatter,
    ScatterComparison fastScatter,
    List<SetupDifference> setups,
    boolean otherRig,
    boolean byRepeatedRuns,
    boolean readings) {
  /** Chance of calling any mean changed where none is. */
  public static final double SHIFT_ALPHA = 0.0375;

  /**
   * Chance of calling the scatter of half a dial changed where none is and firings are independent;
   * neighbours alike by 0.3 make about twice as much of it.
   */
  public static final double GROUP_SCATTER_ALPHA = 0.006;

  /** Chance of calling any single speed's scatter changed where none is: seldom resolved anyway. */
  public static final double SCATTER_ALPHA = 0.0025;

  public RunComparison {
    speeds = List.copyOf(speeds);
    onlyBefore = List.copyOf(onlyBefore);
    onlyAfter = List.copyOf(onlyAfter);
    setups = List.copyOf(setups);
  }

  /** Compares two runs whose set-ups are not known. */
  public static RunComparison of(RunSummary before, RunSummary after) {
    return of(before, after, Map.of(), Map.of());
  }

  /**
   * Compares two runs.
   *
   * @param setupBefore named values of the set-up of the earlier run
   * @param setupAfter the same of the later run
   */
  public static RunComparison of(
      RunSummary before,
      RunSummary after,
      Map<String, String> setupBefore,
      Map<String, String> setupAfter) {
    List<SpeedSummary[]> pairs = new ArrayList<>();
    for (SpeedSummary first : before.speeds()) {
      find(after, first.speed())
          .ifPresent(
              second ->
                  pairs.add(
                      new SpeedSummary[] {
                        first.comparableWith(second), second.comparableWith(first)
                      }));
    }
    // One more test of shift for the whole dial.
    FindingPower power = new FindingPower(pairs.size() + 1, Math.max(1, pairs.size()));
    List<ComparedFirings> firings =
        pairs.stream()
            .map(pair -> ComparedFirings.of(pair[0], before.behind(), pair[1], after.behind()))
            .toList();
    boolean otherRig = before.behind().isOtherRigThan(after.behind());
    Optional<MeanAllowance> seenBefore = before.behind().allowance();
    Optional<MeanAllowance> seenAfter = after.behind().allowance();
    List<Figure<Estimate>> estimates =
        RunShifts.of(
            firings,
            pairs.stream().mapToDouble(pair -> otherRig ? rigs(pair[0], pair[1]) : 0).toArray(),
            // What one of the two runs shows of this camera holds for the other.
            seenBefore.or(() -> seenAfter).orElse(MeanAllowance.USUAL),
            seenAfter.or(() -> seenBefore).orElse(MeanAllowance.USUAL));
    List<SpeedComparison> raw = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      SpeedSummary[] pair = pairs.get(i);
      raw.add(SpeedComparison.of(pair[0], pair[1], firings.get(i), estimates.get(i), power));
    }
    Optional<CommonShift> common =
        CommonShift.of(estimates.stream().flatMap(estimate -> estimate.known().stream()).toList());
    double[] shifts =
        Holm.adjusted(
            DoubleStream.concat(
                    common.stream().mapToDouble(CommonShift::p),
                    raw.stream().flatMapToDouble(s -> known(s.shift().map(k -> k.p()))))
                .toArray());
    List<ScatterComparison> groups =
        adjusted(
            List.of(
                ScatterOfRuns.overSpeeds(half(firings, true), power),
                ScatterOfRuns.overSpeeds(half(firings, false), power)));
    List<ScatterComparison> scatters =
        adjusted(raw.stream().map(SpeedComparison::scatter).toList());

    List<SpeedComparison> speeds = new ArrayList<>();
    int at = common.isPresent() ? 1 : 0;
    for (int i = 0; i < raw.size(); i++) {
      OptionalDouble p =
          raw.get(i).shift().known().isPresent()
              ? OptionalDouble.of(shifts[at++])
              : OptionalDouble.empty();
      speeds.add(raw.get(i).adjusted(p, scatters.get(i)));
    }
    return new RunComparison(
        before,
        after,
        speeds,
        missing(before, after),
        missing(after, before),
        common,
        common.isPresent() ? OptionalDouble.of(shifts[0]) : OptionalDouble.empty(),
        groups.get(0),
        groups.get(1),
        SetupDifference.between(setupBefore, setupAfter),
        otherRig,
        seenBefore.isPresent() || seenAfter.isPresent(),
        pairs.stream().anyMatch(pair -> pair[0].reference() != pair[1].reference()));
  }

  /** What two rigs may differ by at a speed, in squares of stops. */
  static double rigs(SpeedSummary before, SpeedSummary after) {
    return rig(before) + rig(after);
  }

  /**
   * What one rig may be off by. The light over the lens belongs to its panel, so its bias differs
   * from rig to rig, evenly spread; the error of the two-level rule belongs to the blades.
   */
  private static double rig(SpeedSummary speed) {
    double common = speed.budget().map(UncertaintyBudget::commonStops).orElse(0.0);
    double pupil = speed.budget().map(b -> b.readsLongStops() - b.readsShortStops()).orElse(0.0);
    return common * common + pupil * pupil / 12;
  }

  private static List<ComparedFirings> half(List<ComparedFirings> speeds, boolean slow) {
    return speeds.stream().filter(s -> SlowSpeedTrain.governs(s.speed()) == slow).toList();
  }

  private static List<ScatterComparison> adjusted(List<ScatterComparison> scatters) {
    double[] p =
        Holm.adjusted(scatters.stream().flatMapToDouble(scatter -> known(scatter.p())).toArray());
    List<ScatterComparison> adjusted = new ArrayList<>();
    int at = 0;
    for (ScatterComparison scatter : scatters) {
      adjusted.add(scatter.p().known().isPresent() ? scatter.withAdjustedP(p[at++]) : scatter);
    }
    return adjusted;
  }

  private static DoubleStream known(Figure<Double> figure) {
    return figure.known().stream().mapToDouble(Double::doubleValue);
  }

  private static Optional<SpeedSummary> find(RunSummary run, MarkedSpeed speed) {
    return run.speeds().stream().filter(s -> s.speed().equals(speed)).findFirst();
  }

  private static List<MarkedSpeed> missing(RunSummary of, RunSummary in) {
    return of.speeds().stream()
        .map(SpeedSummary::speed)
        .filter(speed -> find(in, speed).isEmpty())
        .toList();
  }

  private static List<SpeedComparison> part(List<SpeedComparison> speeds, boolean slow) {
    return speeds.stream().filter(s -> SlowSpeedTrain.governs(s.speed()) == slow).toList();
  }

  /** The speeds that the slow-speed train governs, or the others. */
  public List<SpeedComparison> part(boolean slow) {
    return part(speeds, slow);
  }

  /** The outcomes without a time that occurred in either run, the gravest first. */
  public List<OutcomeChange> outcomes() {
    return RunStatistics.GRAVEST.stream()
        .map(outcome -> OutcomeChange.of(this, outcome))
        .filter(change -> change.countBefore() + change.countAfter() > 0)
        .toList();
  }

  /** The comparison of one speed, where both runs have it. */
  public Optional<SpeedComparison> at(MarkedSpeed speed) {
    return speeds.stream().filter(s -> s.speed().equals(speed)).findFirst();
  }

  /** Whether there were firings enough to compare every speed that both runs have. */
  public boolean isEverySpeedCompared() {
    return speeds.stream().noneMatch(s -> s.finding() == ShiftFinding.NOT_COMPARABLE);
  }

  /** What became of the curtains; empty for blades. */
  public List<CurtainChange> curtains() {
    return CurtainChange.between(before, after);
  }

  /** The speeds whose mean is shown to have changed. */
  public List<SpeedComparison> changed() {
    return speeds.stream().filter(speed -> speed.finding().isChange()).toList();
  }

  /** Whether the whole dial is shown to have moved by the same amount. */
  public boolean dialMoved() {
    return commonAdjustedP.isPresent() && commonAdjustedP.getAsDouble() <= SHIFT_ALPHA;
  }

  /** Whether anything is called changed: a mean, the dial as a whole, or a scatter. */
  public boolean anythingChanged() {
    return dialMoved()
        || !changed().isEmpty()
        || slowScatter.found()
        || fastScatter.found()
        || speeds.stream().anyMatch(speed -> speed.scatter().found());
  }

  /** How much of the dial the change of the means reaches. */
  public ChangeExtent reach() {
    if (dialMoved()) {
      return ChangeExtent.WHOLE_DIAL;
    }
    List<SpeedComparison> changed = changed();
    if (changed.isEmpty()) {
      return ChangeExtent.NOTHING;
    }
    if (changed.size() == 1) {
      return ChangeExtent.ONE_SPEED;
    }
    return changed.stream().allMatch(s -> SlowSpeedTrain.governs(s.speed()))
            && 2 * changed.size() > part(true).size()
        ? ChangeExtent.SLOW_SPEEDS
        : ChangeExtent.SOME_SPEEDS;
  }
}
