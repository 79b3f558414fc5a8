package org.halflight.stats;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Chances of error when several speeds are looked at together: the step-down method of Holm (1979).
 * Whatever is then called a change at alpha, the chance that any of them is none stays below alpha.
 */
public final class Holm {
  private Holm() {}

  /**
   * @param p chances of the single tests, each from 0 to 1
   * @return the adjusted chances in the same order, to be held against alpha as they are
   */
  public static double[] adjusted(double... p) {
    for (double each : p) {
      if (!(each >= 0 && each <= 1)) {
        throw new IllegalArgumentException("a chance lies from 0 to 1, not " + each);
      }
    }
    int[] rising =
        IntStream.range(0, p.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> p[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] adjusted = new double[p.length];
    double floor = 0;
    for (int i = 0; i < rising.length; i++) {
      floor = Math.max(floor, Math.min(1, (p.length - i) * p[rising[i]]));
      adjusted[rising[i]] = floor;
    }
    return adjusted;
  }
}
