package org.halflight.exposure;

import java.util.Arrays;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * What a light curve shows beside its main opening, which is the stretch with the most light. It
 * sees light that stays below the low level, which edges do not, but only as long as it lasts.
 *
 * @param mainSeconds light of the main opening, in seconds of full light; 0 where it saw none
 * @param beforeSeconds light before the main opening, likewise
 * @param afterSeconds light of the rebound, likewise: over within {@link
 *     LeafExposureMethod#EXPOSURE_GAP_SECONDS} after the closing
 * @param laterSeconds light that comes or lasts later than that, likewise
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

  /** Light below this is dark, or a reading of eight bits does not tell it from the dark. */
  public static final double LEAST_LIGHT = 0.01;

  /** One and a half steps of an eight-bit reading, in counts of ten bits. */
  private static final double STEPS_COUNTS = 6;

  private static final ReboundSeen NO_LIGHT = new ReboundSeen(0, 0, 0, 0, 0, 0, 0);

  /**
   * Of a curve that has a figure by {@link CurveMethod}.
   *
   * @param levels the light that was set
   */
  public static ReboundSeen of(SampledLight curve, LightLevels levels, TickRate rate) {
    CurvePoints points = CurvePoints.of(curve, levels, rate);
    double span = levels.fullCounts() - levels.darkCounts();
    return of(points.seconds(), points.light(), Math.max(LEAST_LIGHT, STEPS_COUNTS / span));
  }

  /**
   * Of the points of a curve.
   *
   * @param seconds times, rising
   * @param light at each, as a fraction of full light
   * @param floor light that is no higher is dark
   */
  public static ReboundSeen of(double[] seconds, double[] light, double floor) {
    int mainFrom = -1;
    int mainTo = -1;
    double main = 0;
    for (int from = next(light, 0, floor); from < light.length; ) {
      int to = end(light, from, floor);
      double here = integral(seconds, light, from, to);
      if (here > main) {
        main = here;
        mainFrom = from;
        mainTo = to;
      }
      from = next(light, to, floor);
    }
    if (mainFrom < 0) {
      return NO_LIGHT;
    }
    double closes = seconds[Math.min(light.length - 1, mainTo)];
    double before = 0;
    double after = 0;
    double later = 0;
    double start = 0;
    double peak = 0;
    for (int from = next(light, 0, floor); from < light.length; ) {
      int to = end(light, from, floor);
      double here = integral(seconds, light, from, to);
      boolean isRebound =
          seconds[Math.min(light.length - 1, to)] - closes
              <= LeafExposureMethod.EXPOSURE_GAP_SECONDS;
      if (from < mainFrom) {
        before += here;
      } else if (from > mainFrom && isRebound) {
        start = after == 0 ? seconds[from] - closes : start;
        after += here;
        peak = Math.max(peak, Arrays.stream(light, from, to).max().orElse(0));
      } else if (from > mainFrom) {
        later += here;
      }
      from = next(light, to, floor);
    }
    return new ReboundSeen(
        main, before, after, later, start, peak, seconds[light.length - 1] - closes);
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

  /** The first point from here on that is bright; the number of points where there is none. */
  private static int next(double[] light, int from, double floor) {
    int i = from;
    while (i < light.length && light[i] <= floor) {
      i++;
    }
    return i;
  }

  /** The first point behind a bright one that is dark; the number of points where there is none. */
  private static int end(double[] light, int from, double floor) {
    int i = from;
    while (i < light.length && light[i] > floor) {
      i++;
    }
    return i;
  }

  /** The integral of a bright stretch with the dark point to either side. */
  private static double integral(double[] seconds, double[] light, int from, int to) {
    double sum = 0;
    for (int i = Math.max(0, from - 1); i < Math.min(light.length - 1, to); i++) {
      sum += (light[i] + light[i + 1]) / 2 * (seconds[i + 1] - seconds[i]);
    }
    return sum;
  }
}
