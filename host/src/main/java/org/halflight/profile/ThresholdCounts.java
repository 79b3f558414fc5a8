package org.halflight.profile;

import org.halflight.signal.BoardTraits;

/**
 * Both thresholds of the centre sensor, read back, in counts of the ten-bit converter.
 *
 * @param lowCounts the low one
 * @param highCounts the high one
 */
public record ThresholdCounts(double lowCounts, double highCounts) {
  public ThresholdCounts {
    if (!(lowCounts >= 0
        && lowCounts < highCounts
        && highCounts <= BoardTraits.FULL_SCALE_COUNTS)) {
      throw new IllegalArgumentException(
          "thresholds must rise within ten bits: " + lowCounts + ", " + highCounts);
    }
  }
}
