package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import org.halflight.session.QuickRepeat;
import org.halflight.stats.Interval;

/**
 * A quick look at a shutter: what its firings come to so far, and which speed is to be fired again.
 * Plain values in, plain values out.
 */
public final class QuickAsFound {
  /**
   * The mean of a speed is known where its interval reaches no further to either side, in stops:
   * nobody would see the rest on film. Our own limit.
   */
  public static final double CLEAR_STOPS = SpeedComparison.SMALL_STOPS;

  private QuickAsFound() {}

  /** What is concluded of one speed. */
  public enum Finding {
    /** Nothing was timed, and nothing failed. */
    NOT_KNOWN,
    /** One firing: no scatter, and no verdict. */
    ONE_FIRING,
    /** Fired again; neither is its verdict in nor its interval narrow. */
    STILL_OPEN,
    /** The interval of its mean is narrow, and a limit lies in it or near it. */
    MEAN_KNOWN,
    /** Its verdict is in. */
    DECIDED
  }

  /** What the firings of one speed of a quick look come to. */
  public static Finding of(SpeedSummary speed) {
    if (speed.isMeanDecided()) {
      return Finding.DECIDED;
    }
    if (isClear(speed)) {
      return Finding.MEAN_KNOWN;
    }
    int timed = speed.errors().n() + (speed.afterRestStops().isPresent() ? 1 : 0);
    return timed == 0 && speed.failed() == 0
        ? Finding.NOT_KNOWN
        : timed <= 1 ? Finding.ONE_FIRING : Finding.STILL_OPEN;
  }

  /**
   * Whether a speed needs no more firings of a quick look: its verdict is in, the interval of its
   * mean is narrow, or more firings do not help because rig or light has to be looked at.
   */
  public static boolean isKnown(SpeedSummary speed) {
    return speed.isMeanDecided() || isClear(speed) || speed.timingBasis().instead().isPresent();
  }

  private static boolean isClear(SpeedSummary speed) {
    Optional<Interval> mean = speed.meanIntervalStops();
    return speed.errors().n() > QuickRepeat.LEAST
        && mean.isPresent()
        && mean.get().high() - mean.get().low() <= 2 * CLEAR_STOPS;
  }

  /**
   * The next repeat; empty where the largest error is known.
   *
   * @param speeds of the run from slow to fast, each fired once at the least
   * @param most counted firings of a usual run: no speed is fired more often
   */
  public static Optional<QuickRepeat> next(List<SpeedSummary> speeds, int most) {
    return QuickRepeat.next(
        speeds.stream()
            .map(
                speed ->
                    new QuickRepeat.SoFar(
                        speed.speed(),
                        speed.tries(),
                        speed.failed() > 0,
                        speed.meanStops().isPresent() ? speed.meanStops() : speed.afterRestStops(),
                        isKnown(speed)
                            || QuickRepeat.isEnough(
                                speed.tries(), most, speed.afterRestStops().isPresent())))
            .toList());
  }
}
