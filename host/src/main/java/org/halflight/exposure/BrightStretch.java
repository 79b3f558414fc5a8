package org.halflight.exposure;

import java.util.ArrayList;
import java.util.List;

/**
 * Light of a curve without a break.
 *
 * @param from its first bright point
 * @param to the first dark point behind it; the number of points where there is none
 * @param before the dark point before it; its first where it begins in light
 * @param behind the dark point behind it; the last of all where it ends in light
 * @param seconds its integral from the one dark point to the other, in seconds of full light
 */
record BrightStretch(int from, int to, int before, int behind, double seconds) {
  /** Light below this is dark, or the reading does not tell it from the dark. */
  static final double LEAST_LIGHT = 0.01;

  /** One and a half steps of an eight-bit reading, in counts of ten bits. */
  private static final double STEPS_COUNTS = 6;

  /** Light that is no higher is dark, as a fraction of full light. */
  static double floor(LightLevels levels) {
    return Math.max(LEAST_LIGHT, STEPS_COUNTS / (levels.fullCounts() - levels.darkCounts()));
  }

  /** Whether it is part of the exposure of the main opening; see {@link ExposureWindow}. */
  boolean isOneExposureWith(BrightStretch main, CurvePoints points) {
    return ExposureWindow.holds(
        points.secondsAt(before), points.secondsAt(main.before()), points.secondsAt(main.behind()));
  }

  /** All of them, in order of time. */
  static List<BrightStretch> of(CurvePoints points, double floor) {
    List<BrightStretch> stretches = new ArrayList<>();
    int i = 0;
    while (i < points.size()) {
      if (points.lightAt(i) <= floor) {
        i++;
        continue;
      }
      int from = i;
      while (i < points.size() && points.lightAt(i) > floor) {
        i++;
      }
      int before = Math.max(0, from - 1);
      int behind = Math.min(points.size() - 1, i);
      stretches.add(new BrightStretch(from, i, before, behind, points.integral(before, behind)));
    }
    return stretches;
  }
}
