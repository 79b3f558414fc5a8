package org.halflight.stats;

import java.util.Arrays;

/** Values that occur more than once. */
final class Ties {
  private Ties() {}

  /** How often each distinct value occurs, from the least value up. */
  static int[] groups(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int[] groups = new int[sorted.length];
    int used = 0;
    for (int i = 0; i < sorted.length; i++) {
      // Compared with ==, so that 0 and -0 are a tie, too.
      if (i == 0 || sorted[i] != sorted[i - 1]) {
        used++;
      }
      groups[used - 1]++;
    }
    return Arrays.copyOf(groups, used);
  }
}
