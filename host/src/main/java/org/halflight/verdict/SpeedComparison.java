package org.halflight.verdict;

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
 * @param compared how many firings of each run are compared: of unequal numbers the first of each
 * @param meanBefore mean error of those in the earlier run
 * @param meanAfter mean error of those in the later run, by its own reading of the marking
 * @param shift of the mean, after less before, with what firings that depend on one another are
 *     allowed; below zero: faster than before
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
    int compared,
    OptionalDouble meanBefore,
    OptionalDouble meanAfter,
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
    if (!before.speed().equals(after.speed())) {
      throw new IllegalArgumentException(
          "different speeds: " + before.speed() + ", " + after.speed());
    }
  }

  /** Both runs of a speed, before any adjustment for the other speeds. */
  static SpeedComparison of(
      SpeedSummary before,
      SpeedSummary after,
      ComparedFirings firings,
      Figure<Estimate> estimate,
      FindingPower power) {
    Sample first = firings.allBefore();
    Sample second = firings.allAfter();
    Figure<MeanShift> shift = estimate.map(Estimate::shift);
    int fewest = first.n();
    boolean enough = fewest >= LEAST_FOR_RANKS;
    return new SpeedComparison(
        before,
        after,
        fewest,
        firings.isEnough() ? OptionalDouble.of(firings.meanBefore()) : before.meanStops(),
        firings.isEnough()
            ? OptionalDouble.of(
                firings.meanAfter()
                    - Stops.between(after.referenceSeconds(), before.referenceSeconds()))
            : after.meanStops(),
        shift,
        OptionalDouble.empty(),
        shift.map(known -> Equivalence.of(known, -SMALL_STOPS, SMALL_STOPS)),
        enough
            ? HodgesLehmann.of(first, second, SpeedSummary.LEVEL)
            : new Figure.NotEnoughFirings<>(fewest, LEAST_FOR_RANKS),
        enough
            ? RankTest.of(first, second)
            : new Figure.NotEnoughFirings<>(fewest, LEAST_FOR_RANKS),
        ScatterOfRuns.atOneSpeed(firings, power),
        power);
  }

  SpeedComparison adjusted(OptionalDouble shiftP, ScatterComparison newScatter) {
    return new SpeedComparison(
        before,
        after,
        compared,
        meanBefore,
        meanAfter,
        shift,
        shiftP,
        withinATenth,
        rankShift,
        rankTest,
        newScatter,
        power);
  }

  /** Whether one run has more firings than are compared. */
  public boolean isCutToTheFirst() {
    return shift.known().isPresent() && before.errors().n() != after.errors().n();
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
            known ->
                OptionalDouble.of(
                    known.standardError() * power.shiftInStandardErrors(known.degreesOfFreedom())))
        .orElse(OptionalDouble.empty());
  }
}
