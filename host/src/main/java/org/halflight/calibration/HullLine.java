package org.halflight.calibration;

import java.util.List;

/**
 * The line that touches all stamps from the side where no delay can put them and leaves the least
 * sum of distances: the edge of the convex hull that lies over the mean of the board times (Moon,
 * Skelly and Towsley 1999, whose linear programme has this edge as its answer). For exponential
 * delays it is the maximum-likelihood line, and its error falls as 1/N.
 *
 * <p>One stamp that no delay explains drags it: see {@link EarlyStamps}.
 */
public final class HullLine {
  private HullLine() {}

  /**
   * @param stamps two or more, board times rising
   */
  public static ClockLine of(List<ClockStamp> stamps, StampSide side) {
    if (stamps.size() < 2) {
      throw new IllegalArgumentException("a line takes two stamps, not " + stamps.size());
    }
    int sign = side == StampSide.HOST_LATE ? 1 : -1;
    int n = stamps.size();
    // Board times from the first on: differences of large times lose digits.
    double start = stamps.get(0).boardSeconds();
    double[] x = new double[n];
    double[] y = new double[n];
    double mean = 0;
    for (int i = 0; i < n; i++) {
      x[i] = stamps.get(i).boardSeconds() - start;
      y[i] = sign * stamps.get(i).differenceSeconds();
      if (i > 0 && !(x[i] > x[i - 1])) {
        throw new IllegalArgumentException("board times must rise, see stamp " + i);
      }
      mean += x[i] / n;
    }
    double offset = y[0];
    for (int i = 0; i < n; i++) {
      y[i] -= offset;
    }
    int[] hull = lowerHull(x, y);
    int edge = 0;
    while (x[hull[edge + 1]] < mean) {
      edge++;
    }
    int from = hull[edge];
    int to = hull[edge + 1];
    double slope = (y[to] - y[from]) / (x[to] - x[from]);
    double intercept = offset + y[from] - slope * (x[from] + start);
    return new ClockLine(sign * slope, sign * intercept);
  }

  /** Andrew's monotone chain; the points are in order already. Ends with both outer points. */
  private static int[] lowerHull(double[] x, double[] y) {
    int[] hull = new int[x.length + 1];
    int used = 0;
    for (int i = 0; i < x.length; i++) {
      while (used >= 2 && turn(x, y, hull[used - 2], hull[used - 1], i) <= 0) {
        used--;
      }
      hull[used++] = i;
    }
    return hull;
  }

  private static double turn(double[] x, double[] y, int a, int b, int c) {
    return (x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a]);
  }
}
