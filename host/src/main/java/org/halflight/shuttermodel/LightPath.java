package org.halflight.shuttermodel;

import java.util.Arrays;
import org.halflight.signal.LightCurve;

/**
 * Light over time like a {@link LightCurve}, but it may begin and end in the light: before the
 * first point it stands at the first value, after the last point at the last. An opening that waits
 * to be closed is one.
 *
 * <p>Immutable.
 */
public final class LightPath {
  private final double[] seconds;
  private final double[] open;

  /**
   * @param seconds times, rising; two equal times make a step
   * @param open the fraction of full light at each time, 0 or more and finite
   */
  public LightPath(double[] seconds, double[] open) {
    if (seconds.length != open.length || seconds.length < 1) {
      throw new IllegalArgumentException("a light path needs as many times as lights, at least 1");
    }
    for (int i = 0; i < seconds.length; i++) {
      if (!Double.isFinite(seconds[i]) || !(open[i] >= 0) || !Double.isFinite(open[i])) {
        throw new IllegalArgumentException("point " + i + " is not finite or below dark");
      }
      if (i > 0 && seconds[i] < seconds[i - 1]) {
        throw new IllegalArgumentException("time runs back at point " + i);
      }
    }
    this.seconds = seconds.clone();
    this.open = open.clone();
  }

  /** The path of a whole light curve. */
  public static LightPath of(LightCurve curve) {
    return new LightPath(curve.seconds(), curve.open());
  }

  /** The times of the points, in seconds; a copy. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** The fractions of full light at the points; a copy. */
  public double[] open() {
    return open.clone();
  }

  /** The time of the last point, in seconds. */
  public double endSeconds() {
    return seconds[seconds.length - 1];
  }

  /** The fraction of full light at which the path ends and stays. */
  public double endOpen() {
    return open[open.length - 1];
  }

  /** The fraction of full light at a time. */
  public double at(double atSeconds) {
    if (atSeconds <= seconds[0]) {
      return open[0];
    }
    if (atSeconds >= endSeconds()) {
      return endOpen();
    }
    int found = Arrays.binarySearch(seconds, atSeconds);
    if (found >= 0) {
      return open[found];
    }
    int right = -found - 1;
    double span = seconds[right] - seconds[right - 1];
    return open[right - 1]
        + (open[right] - open[right - 1]) * (atSeconds - seconds[right - 1]) / span;
  }
}
