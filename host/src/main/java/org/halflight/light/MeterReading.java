package org.halflight.light;

import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/**
 * What the light meter read of one sensor, over some milliseconds.
 *
 * @param sensor the centre (by its low channel) or an outer sensor
 * @param seconds rig time, as of the last beat before it
 * @param counts mean light in counts of the ten-bit converter
 * @param most the greatest single reading in it
 */
public record MeterReading(Channel sensor, double seconds, double counts, int most) {
  public MeterReading {
    if (!(counts >= 0 && counts <= BoardTraits.FULL_SCALE_COUNTS)) {
      throw new IllegalArgumentException("not a reading of ten bits: " + counts);
    }
  }
}
