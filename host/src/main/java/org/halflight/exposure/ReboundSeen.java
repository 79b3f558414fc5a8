package org.halflight.exposure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * What a light curve shows beside its main opening, which is the stretch with the most light. It
 * sees light that stays below the low level, which edges do not, but only as long as it lasts.
 *
 * @param mainSeconds light of the main opening, in seconds of full light; 0 where it saw none
 * @param beforeSeconds light before the main opening, likewise
 * @param afterSeconds light of the rebound, likewise: begins within {@link
 *     LeafExposureMethod#EXPOSURE_GAP_SECONDS} after the closing
 * @param laterSeconds light that begins later than that, likewise
 * @param startSeconds from the closing to the first light of the rebound, in seconds; 0 without one
 * @param peak the brightest of the rebound, as a fraction of full light; 0 without one
 * @param windowSeconds how long it looked after the closing
 */
public record ReboundSeen(
    double mainSeconds,
    double beforeSeconds,
    double afterSeconds,
    double laterSeconds,
    double startSeconds,
    double peak,
    double windowSeconds) {
  /** A curve that lasts so long after the closing has looked for a rebound, in seconds. */
  public static final double LOOKED_SECONDS = LeafExposureMethod.EXPOSURE_GAP_SECONDS;

  private static final ReboundSeen NO_LIGHT = new ReboundSeen(0, 0, 0, 0, 0, 0, 0);

  /**
   * Of a curve that has a figure by {@link CurveMethod}.
   *
   * @param levels the light that was set
   */
  public static ReboundSeen of(SampledLight curve, LightLevels levels, TickRate rate) {
    return of(CurvePoints.of(curve, levels, rate), BrightStretch.floor(levels));
  }

  /**
   * Of the points of a curve.
   *
   * @param floor light that is no higher is dark
   */
  static ReboundSeen of(CurvePoints points, double floor) {
    List<BrightStretch> stretches = BrightStretch.of(points, floor);
    Optional<BrightStretch> brightest =
        stretches.stream()
            .filter(each -> each.seconds() > 0)
            .max(Comparator.comparingDouble(BrightStretch::seconds));
    if (brightest.isEmpty()) {
      return NO_LIGHT;
    }
    BrightStretch main = brightest.get();
    double closes = points.secondsAt(main.behind());
    double before = 0;
    double after = 0;
    double later = 0;
    double start = 0;
    double peak = 0;
    for (BrightStretch each : stretches) {
      boolean isRebound = each.isOneExposureWith(main, points);
      if (each.from() < main.from()) {
        before += each.seconds();
      } else if (each.from() > main.from() && isRebound) {
        start = after == 0 ? points.secondsAt(each.from()) - closes : start;
        after += each.seconds();
        peak =
            Math.max(
                peak,
                IntStream.range(each.from(), each.to())
                    .mapToDouble(points::lightAt)
                    .max()
                    .orElse(0));
      } else if (each.from() > main.from()) {
        later += each.seconds();
      }
    }
    return new ReboundSeen(
        main.seconds(),
        before,
        after,
        later,
        start,
        peak,
        points.secondsAt(points.size() - 1) - closes);
  }

  /** Whether it lasted long enough after the closing to tell that there was no rebound. */
  public boolean looked() {
    return windowSeconds >= LOOKED_SECONDS;
  }

  /** All light after the main opening as a share of its own; 0 where it saw no light. */
  public double afterShare() {
    return mainSeconds > 0 ? (afterSeconds + laterSeconds) / mainSeconds : 0;
  }

  /** All light before the main opening as a share of its own; 0 where it saw no light. */
  public double beforeShare() {
    return mainSeconds > 0 ? beforeSeconds / mainSeconds : 0;
  }
}
