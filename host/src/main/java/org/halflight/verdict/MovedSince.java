package org.halflight.verdict;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.session.RunConditions;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.stats.Interval;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;
import org.halflight.stats.SharedScatter;

/**
 * Whether a shutter has moved since it went back: the run of a later visit as found beside the last
 * run of the visit before as left. Exercised firings are compared with exercised ones, and the
 * first after rest with the first after rest, never one with the other.
 *
 * @param exercised of all firings but the first after rest
 * @param afterRest of the first after rest alone
 * @param failures outcomes without a time that no firing had as left
 * @param curtains what became of the curtains; empty for blades, and where the runs cannot be
 *     compared
 */
public record MovedSince(
    Part exercised, Part afterRest, List<OutcomeChange> failures, List<CurtainChange> curtains) {
  /** Rests that differ by more than this factor are not the same rest: our own limit. */
  static final double MOST_REST_RATIO = 4;

  /** What one of the two comparisons comes to. */
  public sealed interface Part {
    /**
     * Both can be compared.
     *
     * @param speed that it is about; empty where the whole dial has the shift in common
     * @param stops the shift, above zero is slower than as left
     * @param interval of it, of confidence {@link SpeedSummary#LEVEL}
     * @param answer what that shows
     * @param changed at how many speeds a change is shown
     * @param speeds how many are compared
     */
    record Compared(
        Optional<MarkedSpeed> speed,
        double stops,
        Interval interval,
        Answer answer,
        int changed,
        int speeds)
        implements Part {
      /** Half the width of the interval, in stops. */
      public double uncertaintyStops() {
        return (interval.high() - interval.low()) / 2;
      }
    }

    /**
     * They cannot.
     *
     * @param names what was unlike in the set-ups, for {@link Why#OTHER_SETUP}; else empty
     */
    record NotComparable(Why why, List<String> names) implements Part {
      public NotComparable {
        names = List.copyOf(names);
      }
    }
  }

  /** What a shift shows. */
  public enum Answer {
    /** It has moved. */
    MOVED,
    /** At no speed has it moved by a tenth of a stop. */
    LESS_THAN_A_TENTH,
    /** Neither is shown. */
    NOT_SHOWN
  }

  /** Why two runs are not compared. */
  public enum Why {
    /** The set-ups are unlike. */
    OTHER_SETUP,
    /** Two rigs measured, and not both with a profile. */
    OTHER_RIG,
    /** No speed was fired in both. */
    NO_SAME_SPEED,
    /** At no speed are there two timed firings in both, or they are all alike. */
    FEW_FIRINGS,
    /** The run as left has no first firing after rest. */
    NO_REST_LEFT,
    /** The run as found has none. */
    NO_REST_FOUND,
    /** They were at different speeds. */
    OTHER_REST_SPEED,
    /** One had rested much longer than the other. */
    OTHER_REST
  }

  /**
   * One of the two runs.
   *
   * @param run its speeds, with the rigs that measured them
   * @param conditions under which it was fired
   */
  public record Side(RunSummary run, RunConditions conditions) {
    boolean isCalibrated() {
      return run.speeds().stream().allMatch(s -> s.decisionBasis().rig().isCalibrated());
    }

    Optional<SpeedSummary> afterRest() {
      return run.speeds().stream().filter(s -> s.afterRestStops().isPresent()).findFirst();
    }
  }

  public MovedSince {
    failures = List.copyOf(failures);
    curtains = List.copyOf(curtains);
  }

  /**
   * Compares two visits.
   *
   * @param left the last run as left of the visit before, for exercised firings
   * @param found the run as found of the later visit, likewise
   * @param leftAfterRest the run as left that has the first firing after rest; may be the same
   * @param foundAfterRest the run as found that has it; may be the same
   */
  public static MovedSince of(Side left, Side found, Side leftAfterRest, Side foundAfterRest) {
    RunComparison runs = RunComparison.of(left.run(), found.run());
    List<OutcomeChange> failures =
        runs.outcomes().stream()
            .filter(change -> SpeedSummary.FAILURES.contains(change.outcome()))
            .filter(change -> change.countBefore() == 0)
            .toList();
    Optional<Part> unlike = unlike(left, found);
    return new MovedSince(
        unlike.orElseGet(() -> exercised(runs)),
        unlike(leftAfterRest, foundAfterRest).orElseGet(() -> rest(leftAfterRest, foundAfterRest)),
        failures,
        unlike.isPresent() ? List.of() : runs.curtains());
  }

  private static Optional<Part> unlike(Side left, Side found) {
    List<String> names = left.conditions().unlike(found.conditions());
    if (!names.isEmpty()) {
      return Optional.of(new Part.NotComparable(Why.OTHER_SETUP, names));
    }
    return left.run().behind().isOtherRigThan(found.run().behind())
            && !(left.isCalibrated() && found.isCalibrated())
        ? Optional.of(not(Why.OTHER_RIG))
        : Optional.empty();
  }

  private static Part exercised(RunComparison runs) {
    List<SpeedComparison> compared =
        runs.speeds().stream().filter(s -> s.finding() != ShiftFinding.NOT_COMPARABLE).toList();
    if (compared.isEmpty()) {
      return not(runs.speeds().isEmpty() ? Why.NO_SAME_SPEED : Why.FEW_FIRINGS);
    }
    boolean moved = runs.reach() != ChangeExtent.NOTHING;
    Answer answer =
        moved
            ? Answer.MOVED
            : compared.stream().allMatch(s -> s.finding() == ShiftFinding.LESS_THAN_A_TENTH)
                ? Answer.LESS_THAN_A_TENTH
                : Answer.NOT_SHOWN;
    boolean ofDial = moved ? runs.dialMoved() : runs.common().isPresent();
    if (ofDial) {
      CommonShift common = runs.common().orElseThrow();
      return new Part.Compared(
          Optional.empty(),
          common.stops(),
          common.interval(),
          answer,
          runs.changed().size(),
          compared.size());
    }
    SpeedComparison most =
        (moved ? runs.changed() : compared)
            .stream()
                .max(Comparator.comparingDouble(s -> Math.abs(s.shift().get().shift())))
                .orElseThrow();
    return compared(
        most.speed(), most.shift().get(), answer, runs.changed().size(), compared.size());
  }

  /**
   * One firing beside one. Its scatter is that of the exercised firings at its speed, with what a
   * single firing and a run are allowed; whether first firings scatter more is not known.
   */
  private static Part rest(Side left, Side found) {
    Optional<SpeedSummary> before = left.afterRest();
    Optional<SpeedSummary> after = found.afterRest();
    if (before.isEmpty() || after.isEmpty()) {
      return not(before.isEmpty() ? Why.NO_REST_LEFT : Why.NO_REST_FOUND);
    }
    SpeedSummary first = before.get();
    SpeedSummary second = after.get();
    if (!first.speed().equals(second.speed())) {
      return not(Why.OTHER_REST_SPEED);
    }
    if (isOtherRest(left.conditions().restSeconds(), found.conditions().restSeconds())) {
      return not(Why.OTHER_REST);
    }
    List<Sample> exercised =
        Stream.of(first.errors(), second.errors()).filter(s -> s.n() >= MeanShift.LEAST).toList();
    if (exercised.stream().allMatch(s -> s.sd().get() == 0)) {
      return not(Why.FEW_FIRINGS);
    }
    SharedScatter scatter = SharedScatter.within(exercised);
    double shift =
        second.afterRestStops().orElseThrow()
            + Stops.between(second.referenceSeconds(), first.referenceSeconds())
            - first.afterRestStops().orElseThrow();
    boolean otherRig = left.run().behind().isOtherRigThan(found.run().behind());
    double variance =
        2 * scatter.variance() * MeanAllowance.USUAL.ofMean(1)
            + (otherRig ? RunComparison.rigs(first, second) : 0);
    MeanShift moved =
        MeanShift.of(shift, Math.sqrt(variance), scatter.degrees(), SpeedSummary.LEVEL);
    double low = moved.interval().low();
    double high = moved.interval().high();
    Answer answer =
        low > 0 || high < 0
            ? Answer.MOVED
            : low > -SpeedComparison.SMALL_STOPS && high < SpeedComparison.SMALL_STOPS
                ? Answer.LESS_THAN_A_TENTH
                : Answer.NOT_SHOWN;
    return compared(first.speed(), moved, answer, answer == Answer.MOVED ? 1 : 0, 1);
  }

  private static Part compared(
      MarkedSpeed speed, MeanShift shift, Answer answer, int changed, int speeds) {
    return new Part.Compared(
        Optional.of(speed), shift.shift(), shift.interval(), answer, changed, speeds);
  }

  private static boolean isOtherRest(OptionalDouble before, OptionalDouble after) {
    if (before.isEmpty() || after.isEmpty()) {
      return false;
    }
    double most = Math.max(before.getAsDouble(), after.getAsDouble());
    double least = Math.min(before.getAsDouble(), after.getAsDouble());
    return most > MOST_REST_RATIO * least;
  }

  private static Part not(Why why) {
    return new Part.NotComparable(why, List.of());
  }
}
