package org.halflight.everyday;

import java.util.Optional;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LightLevels;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;

/**
 * Light of a light curve outside its main opening, which is the stretch with the most light. It
 * sees light that stays below the low level, which edges do not, but only as long as the curve
 * lasts.
 *
 * @param before light before the main opening as a share of it
 * @param after light after the main opening as a share of it
 */
record StrayLight(double before, double after) {
  /** Light below this is dark, or a reading of eight bits does not tell it from the dark. */
  static final double LEAST_LIGHT = 0.01;

  /** One and a half steps of an eight-bit reading, in counts of ten bits. */
  private static final double STEPS_COUNTS = 6;

  /** Of a firing; empty without a light curve that has a figure. */
  static Optional<StrayLight> of(FiringResult firing) {
    return firing
        .curve()
        .filter(curve -> curve.exposure().flatMap(its -> its.measured()).isPresent())
        .map(curve -> of(curve, firing));
  }

  private static StrayLight of(FiringCurve curve, FiringResult firing) {
    LightLevels light = curve.light().orElseThrow();
    CurvePoints points = CurvePoints.of(curve.sampled(), light, firing.rate());
    double floor = Math.max(LEAST_LIGHT, STEPS_COUNTS / (light.fullCounts() - light.darkCounts()));
    return of(points.seconds(), points.light(), floor);
  }

  /** Of the points of a curve; what stands no higher than the floor is dark. */
  static StrayLight of(double[] seconds, double[] light, double floor) {
    double before = 0;
    double main = 0;
    double after = 0;
    int i = 0;
    while (i < light.length) {
      if (light[i] <= floor) {
        i++;
        continue;
      }
      int first = Math.max(0, i - 1);
      while (i < light.length && light[i] > floor) {
        i++;
      }
      double here = integral(seconds, light, first, Math.min(light.length - 1, i));
      if (here > main) {
        before += main + after;
        main = here;
        after = 0;
      } else {
        after += here;
      }
    }
    return main == 0 ? new StrayLight(0, 0) : new StrayLight(before / main, after / main);
  }

  private static double integral(double[] seconds, double[] light, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += (light[i] + light[i + 1]) / 2 * (seconds[i + 1] - seconds[i]);
    }
    return sum;
  }
}
