package org.halflight.exposure;

/**
 * Where an outer sensor switches in its own light.
 *
 * @param level as a fraction of its full light less dark
 * @param lightCounts its full light less dark, in counts of the ten-bit converter
 */
public record SensorLevel(double level, double lightCounts) {
  /** Nearer to dark or to full light its edges say too little of half light. */
  public static final double LEAST = 0.3;

  /** Likewise. */
  public static final double MOST = 0.7;

  public SensorLevel {
    if (!(lightCounts > 0) || !Double.isFinite(level)) {
      throw new IllegalArgumentException("no light, no level: " + lightCounts + ", " + level);
    }
  }

  /** Of a sensor whose dark and full light were read. */
  public static SensorLevel of(double darkCounts, double fullCounts, double thresholdCounts) {
    double light = fullCounts - darkCounts;
    return new SensorLevel((thresholdCounts - darkCounts) / light, light);
  }

  /** Whether its edges can be carried to half light. */
  public boolean isNearHalf() {
    return level >= LEAST && level <= MOST;
  }
}
