package org.halflight.calibration;

/**
 * One reading of a gauge study.
 *
 * @param part what was measured: a shutter at a speed
 * @param operator who measured, or which rig
 * @param value the reading
 */
public record GaugeReading(String part, String operator, double value) {
  public GaugeReading {
    if (part.isEmpty() || operator.isEmpty() || !Double.isFinite(value)) {
      throw new IllegalArgumentException("not a reading: " + part + " " + operator + " " + value);
    }
  }
}
