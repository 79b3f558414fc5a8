package org.halflight.light;

import org.halflight.signal.Channel;

/**
 * The needle of one sensor, with where it was in its last second.
 *
 * @param sensor the centre (by its low channel) or an outer sensor
 * @param counts light now, in counts of the ten-bit converter
 * @param least of the last second
 * @param most of the last second
 * @param clips whether a single reading of now may be at the end of the scale
 * @param wholeSecond whether it has been read for a second
 */
public record Needle(
    Channel sensor, double counts, double least, double most, boolean clips, boolean wholeSecond) {

  /** By how much the light moved in the last second, as a share of it; 0 in the dark. */
  public double wander() {
    return counts <= 0 ? 0 : (most - least) / counts;
  }
}
