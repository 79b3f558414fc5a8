package org.halflight.exposure;

import java.util.Arrays;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * A sampled light curve as points of straight lines: time in seconds from its first reading, and
 * light as a fraction of full light. A span of the plateau is a level piece, so that its mean
 * counts for the whole of it; one that reaches into the next part holds some of the closing, and a
 * line across it is nearer to the light. The short spans of a tail pass through a ramp as readings
 * do: each is a point in its middle.
 *
 * <p>An eight-bit reading whose step holds the dark or the full level is taken as that level: there
 * the leaves rest, and anywhere else they only pass. What this can be wrong is no more than what
 * the step leaves open anyway.
 *
 * <p>Lost values are left out, and cut parts are joined by a line: {@link CurveMethod} refuses such
 * a curve, a picture may show it all the same.
 */
public final class CurvePoints {
  /** Half a step of an eight-bit reading in counts of ten bits, and half a count of noise. */
  static final double STEP_REACH_COUNTS = 2.5;

  private final double dark;
  private final double span;
  private double[] seconds = {};
  private double[] light = {};
  private boolean[] single = {};

  private CurvePoints(double darkCounts, double spanCounts) {
    dark = darkCounts;
    span = spanCounts;
  }

  /**
   * The points of a curve.
   *
   * @param levels dark and full light; full must be above dark
   */
  public static CurvePoints of(SampledLight curve, LightLevels levels, TickRate rate) {
    if (!(levels.fullCounts() > levels.darkCounts())) {
      throw new IllegalArgumentException("full light is above dark: " + levels);
    }
    CurvePoints points =
        new CurvePoints(levels.darkCounts(), levels.fullCounts() - levels.darkCounts());
    long origin = curve.parts().get(0).firstTicks();
    for (int i = 0; i < curve.parts().size(); i++) {
      long until =
          i + 1 < curve.parts().size() ? curve.parts().get(i + 1).firstTicks() : Long.MAX_VALUE;
      points.add(curve.parts().get(i), origin, until, curve.parts().get(0).periodTicks(), rate);
    }
    return points;
  }

  /**
   * Points that are known already, each single.
   *
   * @param seconds times, rising
   * @param light at each, as a fraction of full light
   */
  static CurvePoints of(double[] seconds, double[] light) {
    CurvePoints points = new CurvePoints(0, 1);
    points.grow(seconds.length);
    for (int i = 0; i < seconds.length; i++) {
      points.put(i, seconds[i], light[i], true);
    }
    return points;
  }

  /** The times, in seconds from the first reading; a copy. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** The light at each time as a fraction of full light, less the dark; a copy. */
  public double[] light() {
    return light.clone();
  }

  int size() {
    return seconds.length;
  }

  double secondsAt(int i) {
    return seconds[i];
  }

  double lightAt(int i) {
    return light[i];
  }

  /** Whether a point is the light at its time, and not an end of a span of the plateau. */
  boolean isSingle(int i) {
    return single[i];
  }

  /** The integral from one point to another, in seconds of full light. */
  double integral(int from, int to) {
    double sum = 0;
    for (int i = from + 1; i <= to; i++) {
      sum += (light[i] + light[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return sum;
  }

  /** When the light passes a level between a point and the next one. */
  double crossing(int left, double level) {
    double rise = light[left + 1] - light[left];
    double part = rise == 0 ? 0 : (level - light[left]) / rise;
    return seconds[left] + part * (seconds[left + 1] - seconds[left]);
  }

  private void add(
      SampledLight.Part part, long origin, long until, long readingTicks, TickRate rate) {
    int n = part.values().size();
    boolean means = part.kind() == SampledLight.Kind.PLATEAU;
    boolean tail = part.kind() == SampledLight.Kind.TAIL;
    int had = seconds.length;
    grow(had + (means ? 2 * n : n));
    int at = had;
    for (int i = 0; i < n; i++) {
      long ticks = part.firstTicks() + i * part.periodTicks();
      double counts = part.counts(i);
      long end = ticks + part.periodTicks();
      if (Double.isNaN(counts) || ticks >= until || (means && end > until)) {
        continue;
      }
      if (means) {
        at = put(at, rate.seconds(ticks - origin), (counts - dark) / span, false);
        at = put(at, rate.seconds(end - origin), (counts - dark) / span, false);
      } else if (tail) {
        long middle = ticks + (part.periodTicks() - readingTicks) / 2;
        at = put(at, rate.seconds(middle - origin), (counts - dark) / span, true);
      } else {
        at = put(at, rate.seconds(ticks - origin), ofReading(counts), true);
      }
    }
    grow(at);
  }

  private double ofReading(double counts) {
    if (Math.abs(counts - dark) <= STEP_REACH_COUNTS) {
      return 0;
    }
    double full = dark + span;
    return Math.abs(counts - full) <= STEP_REACH_COUNTS ? 1 : (counts - dark) / span;
  }

  private void grow(int size) {
    seconds = Arrays.copyOf(seconds, size);
    light = Arrays.copyOf(light, size);
    single = Arrays.copyOf(single, size);
  }

  private int put(int at, double time, double fraction, boolean isSingle) {
    seconds[at] = time;
    light[at] = fraction;
    single[at] = isSingle;
    return at + 1;
  }
}
