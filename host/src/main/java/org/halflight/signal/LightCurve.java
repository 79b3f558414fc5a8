package org.halflight.signal;

import java.util.Arrays;

/**
 * The light at the film plane over time as a fraction of the light with the shutter held fully
 * open: straight lines between points, and dark before the first and after the last.
 *
 * <p>Immutable. All its figures are exact for the straight lines.
 */
public final class LightCurve {
  private final double[] seconds;
  private final double[] open;

  /**
   * @param seconds times, rising; two equal times make a step
   * @param open the fraction of full light at each time, 0 or more and finite; 0 at both ends
   */
  public LightCurve(double[] seconds, double[] open) {
    if (seconds.length != open.length || seconds.length < 2) {
      throw new IllegalArgumentException("a light curve needs as many times as lights, at least 2");
    }
    for (int i = 0; i < seconds.length; i++) {
      if (!Double.isFinite(seconds[i]) || !(open[i] >= 0) || !Double.isFinite(open[i])) {
        throw new IllegalArgumentException("point " + i + " is not finite or below dark");
      }
      if (i > 0 && seconds[i] < seconds[i - 1]) {
        throw new IllegalArgumentException("time runs back at point " + i);
      }
    }
    if (open[0] != 0 || open[open.length - 1] != 0) {
      throw new IllegalArgumentException("a light curve starts and ends in the dark");
    }
    this.seconds = seconds.clone();
    this.open = open.clone();
  }

  /** The times of the points, in seconds; a copy. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** The fractions of full light at the points; a copy. */
  public double[] open() {
    return open.clone();
  }

  /** The fraction of full light at a time. */
  public double at(double atSeconds) {
    if (atSeconds <= seconds[0] || atSeconds >= seconds[seconds.length - 1]) {
      return 0;
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

  /** The effective exposure time: the integral of the curve, in seconds (the sense of ISO 516). */
  public double integralSeconds() {
    double sum = 0;
    for (int i = 1; i < seconds.length; i++) {
      sum += (open[i] + open[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return sum;
  }

  /** How long the light stays above a level, over all its pulses, in seconds. */
  public double secondsAbove(double level) {
    double sum = 0;
    for (int i = 1; i < seconds.length; i++) {
      double span = seconds[i] - seconds[i - 1];
      double low = Math.min(open[i], open[i - 1]);
      double high = Math.max(open[i], open[i - 1]);
      if (low > level) {
        sum += span;
      } else if (high > level) {
        sum += span * (high - level) / (high - low);
      }
    }
    return sum;
  }

  /** From first to last light, in seconds. */
  public double totalSeconds() {
    int first = 0;
    while (first + 1 < open.length && open[first + 1] == 0) {
      first++;
    }
    int last = open.length - 1;
    while (last > first && open[last - 1] == 0) {
      last--;
    }
    return seconds[last] - seconds[first];
  }

  /** The greatest light on the curve. */
  public double peak() {
    return Arrays.stream(open).max().getAsDouble();
  }

  /** The same curve, later by a time in seconds. */
  public LightCurve shifted(double bySeconds) {
    double[] moved = seconds.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += bySeconds;
    }
    return new LightCurve(moved, open);
  }
}
