package org.halflight.exposure;

import org.halflight.signal.BoardTraits;

/**
 * Dark and full light of one outer sensor, in counts of the rig's ten-bit converter.
 *
 * @param darkCounts sensor with the shutter shut
 * @param fullCounts sensor with the shutter held fully open
 */
public record SensorLight(double darkCounts, double fullCounts) {
  public SensorLight {
    for (double counts : new double[] {darkCounts, fullCounts}) {
      if (!(counts >= 0 && counts <= BoardTraits.FULL_SCALE_COUNTS)) {
        throw new IllegalArgumentException("not a reading of ten bits: " + counts);
      }
    }
  }

  /** Whether it is bright enough to be told from the dark, and not at its end. */
  public boolean isFit() {
    return fullCounts - darkCounts >= LightLevels.LEAST_LIGHT_COUNTS
        && fullCounts <= LightLevels.SATURATED_COUNTS;
  }

  /** A voltage as a fraction of its full light less dark. */
  public double level(double counts) {
    return (counts - darkCounts) / (fullCounts - darkCounts);
  }
}
