package org.halflight.verdict;

import java.util.Objects;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.stats.Equivalence;
import org.halflight.stats.Figure;
import org.halflight.stats.HodgesLehmann;
import org.halflight.stats.MeanShift;
import org.halflight.stats.RankTest;
import org.halflight.stats.Sample;

/**
 * One marked speed in two runs, in stops.
 *
 * @param before the earlier run
 * @param after the later run
 * @param shift of the mean, after less before, by Welch; below zero: faster than before
 * @param adjustedP the chance of such a shift where there is none, after Holm over all shifts of
 *     the comparison
 * @param withinATenth the two one-sided tests of 'less than a tenth of a stop either way'
 * @param rankShift the shift by Hodges and Lehmann, from {@link #LEAST_FOR_RANKS} firings up
 * @param rankTest the exact rank test, likewise; not adjusted, a second opinion
 * @param scatter both scatters against each other
 * @param power of the tests of this comparison
 */
public record SpeedComparison(
    SpeedSummary before,
    SpeedSummary after,
    Figure<MeanShift> shift,
    OptionalDouble adjustedP,
    Figure<Equivalence> withinATenth,
    Figure<HodgesLehmann> rankShift,
    Figure<RankTest> rankTest,
    ScatterComparison scatter,
    FindingPower power) {
  /** A change that nobody would see on film. */
  public static final double SMALL_STOPS = 0.1;

  /** Chance of calling one speed's change less than a tenth of a stop where it is not. */
  public static final double EQUIVALENCE_ALPHA = 0.05;

  /**
   * Least firings in each run for the rank methods: with five against five the least possible
   * chance is 2 in 252, which can never pass Holm over nine speeds at one in twenty.
   */
  public static final int LEAST_FOR_RANKS = 6;

  public SpeedComparison {
    Objects.requireNonNull(before);
    Objects.requireNonNull(after);
    if (!before.speed().equals(after.speed())) {
      throw new IllegalArgumentException(
          "different speeds: " + before.speed() + ", " + after.speed());
    }
  }

  /** Both runs of a speed, before any adjustment for the other speeds. */
  static SpeedComparison of(SpeedSummary before, SpeedSummary after, FindingPower power) {
    Sample first = before.errors();
    Sample second = afterAsBefore(before, after);
    Figure<MeanShift> shift = MeanShift.welch(first, second, SpeedSummary.LEVEL);
    int fewest = Math.min(first.n(), second.n());
    boolean enough = fewest >= LEAST_FOR_RANKS;
    return new SpeedComparison(
        before,
        after,
        shift,
        OptionalDouble.empty(),
        shift.map(known -> Equivalence.of(known, -SMALL_STOPS, SMALL_STOPS)),
        enough
            ? HodgesLehmann.of(first, second, SpeedSummary.LEVEL)
            : new Figure.NotEnoughFirings<>(fewest, LEAST_FOR_RANKS),
        enough
            ? RankTest.of(first, second)
            : new Figure.NotEnoughFirings<>(fewest, LEAST_FOR_RANKS),
        ScatterOfRuns.atOneSpeed(first, second, power),
        power);
  }

  /** The later errors, held against the reading of the marking that the earlier run had. */
  static Sample afterAsBefore(SpeedSummary before, SpeedSummary after) {
    double between = Stops.between(after.referenceSeconds(), before.referenceSeconds());
    double[] errors = after.errors().values();
    for (int i = 0; between != 0 && i < errors.length; i++) {
      errors[i] += between;
    }
    return Sample.of(errors);
  }

  SpeedComparison adjusted(OptionalDouble shiftP, ScatterComparison newScatter) {
    return new SpeedComparison(
        before, after, shift, shiftP, withinATenth, rankShift, rankTest, newScatter, power);
  }

  /** The marked speed. */
  public MarkedSpeed speed() {
    return before.speed();
  }

  /** What is shown about the mean. */
  public ShiftFinding finding() {
    if (adjustedP.isEmpty()) {
      return ShiftFinding.NOT_COMPARABLE;
    }
    boolean changed = adjustedP.getAsDouble() <= RunComparison.SHIFT_ALPHA;
    boolean small = withinATenth.known().filter(test -> test.shown(EQUIVALENCE_ALPHA)).isPresent();
    if (changed) {
      return small ? ShiftFinding.CHANGED_BY_LITTLE : ShiftFinding.CHANGED;
    }
    return small ? ShiftFinding.LESS_THAN_A_TENTH : ShiftFinding.NO_EVIDENCE;
  }

  /**
   * The shift at this speed that so many firings of this scatter find in 8 of 10 cases, in stops;
   * empty where the shift is not known.
   */
  public OptionalDouble findableStops() {
    return shift
        .known()
        .map(
            known -> {
              double each =
                  known.standardError()
                      / Math.sqrt(1.0 / before.errors().n() + 1.0 / after.errors().n());
              int fewest = Math.min(before.errors().n(), after.errors().n());
              return OptionalDouble.of(each * power.shiftInSds(fewest));
            })
        .orElse(OptionalDouble.empty());
  }
}
