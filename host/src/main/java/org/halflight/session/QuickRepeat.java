package org.halflight.session;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;

/**
 * What a quick look fires again once every speed was fired: the largest error, two times more and
 * then until it is known.
 *
 * @param speed to be fired once more
 * @param number counts the repeats of this speed from 1
 * @param why it is this one
 */
public record QuickRepeat(MarkedSpeed speed, int number, Why why) {
  /** A look is followed by so many repeats at the least before it counts as known. */
  public static final int LEAST = 2;

  /** Why a speed is fired again. */
  public enum Why {
    /** No speed is further off so far. */
    LARGEST_ERROR,
    /** Its release hung, opened twice or did not open: that weighs more than any error. */
    FAILED
  }

  /**
   * What is known of one speed so far.
   *
   * @param tries releases that count and say something about the shutter
   * @param failed whether one of them hung, opened twice or did not open
   * @param errorStops mean error so far, that of the first firing after rest where there is no
   *     other; empty where nothing was timed
   * @param isKnown whether more firings are not needed: the verdict is in, the interval of the mean
   *     is narrow enough, or it was fired as often as in a usual run
   */
  public record SoFar(
      MarkedSpeed speed, int tries, boolean failed, OptionalDouble errorStops, boolean isKnown) {
    /** From an error of 0 up; a failure lies above every error, what nobody could time below. */
    private double weight() {
      return failed ? Double.POSITIVE_INFINITY : Math.abs(errorStops.orElse(0));
    }

    private int repeats() {
      return tries - 1;
    }

    private boolean isBegun() {
      return repeats() > 0 && repeats() < LEAST && !isKnown;
    }

    private boolean saysSomething() {
      return failed || errorStops.isPresent();
    }
  }

  /**
   * The next repeat, from what was measured so far and nothing else.
   *
   * @param speeds of the run from slow to fast, each fired once at the least
   * @return empty where the largest error is known, and where nothing could be timed
   */
  public static Optional<QuickRepeat> next(List<SoFar> speeds) {
    return speeds.stream()
        .filter(SoFar::isBegun)
        .findFirst()
        .or(() -> largest(speeds).filter(each -> !each.isKnown()))
        .map(
            each ->
                new QuickRepeat(
                    each.speed(),
                    each.repeats() + 1,
                    each.failed() ? Why.FAILED : Why.LARGEST_ERROR));
  }

  /**
   * Whether a speed was fired as often as in a usual run, whatever came of it.
   *
   * @param afterRest whether one of the tries was the first after rest, which a usual run has on
   *     top of its firings
   */
  public static boolean isEnough(int tries, int firingsOfUsualRun, boolean afterRest) {
    int counted = afterRest ? tries - 1 : tries;
    return counted > LEAST && counted >= firingsOfUsualRun;
  }

  /** Of two as large the slower one: its firings tell more of a train. */
  private static Optional<SoFar> largest(List<SoFar> speeds) {
    return speeds.stream()
        .filter(SoFar::saysSomething)
        .reduce((a, b) -> Comparator.comparingDouble(SoFar::weight).compare(b, a) > 0 ? b : a);
  }
}
