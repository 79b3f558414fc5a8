package org.halflight.exposure;

import java.util.Optional;
import org.halflight.signal.BoardTraits;

/**
 * Light of one outer sensor as it was read when the light was set, in counts of the rig's ten-bit
 * converter.
 *
 * @param darkCounts with the shutter shut
 * @param fullCounts with the shutter held fully open
 */
public record SensorLight(double darkCounts, double fullCounts) {
  public SensorLight {
    for (double counts : new double[] {darkCounts, fullCounts}) {
      if (!(counts >= 0 && counts <= BoardTraits.FULL_SCALE_COUNTS)) {
        throw new IllegalArgumentException("not a reading of ten bits: " + counts);
      }
    }
  }

  /** Where a threshold stands in it; empty where there is too little light, or too much. */
  public Optional<SensorLevel> level(double thresholdCounts) {
    return fullCounts - darkCounts >= LightLevels.LEAST_LIGHT_COUNTS / 2
            && fullCounts <= LightLevels.SATURATED_COUNTS
        ? Optional.of(SensorLevel.of(darkCounts, fullCounts, thresholdCounts))
        : Optional.empty();
  }
}
