package org.halflight.bench;

import java.util.List;
import org.halflight.exposure.LevelPair;

/**
 * What a calibration does.
 *
 * @param levels the levels at which pulses are made, as fractions of the LED's light; several tell
 *     the lag from the comparators
 * @param widthSeconds widths of the pulses
 * @param pulses how many of each
 * @param pingSeconds how long the clocks are held against each other; 0 leaves it out
 * @param sweeps whether the thresholds are swept
 */
public record CalibrationPlan(
    List<LevelPair> levels,
    List<Double> widthSeconds,
    int pulses,
    double pingSeconds,
    boolean sweeps) {
  /** Three pairs of levels, 100 us to 1/8 s, ten of each, two minutes of pings. */
  public static final CalibrationPlan USUAL =
      new CalibrationPlan(
          List.of(LevelPair.GAUSS, new LevelPair(0.12, 0.65), new LevelPair(0.35, 0.88)),
          List.of(100e-6, 500e-6, 2e-3, 1.0 / 64, 0.125),
          10,
          120,
          true);

  public CalibrationPlan {
    levels = List.copyOf(levels);
    widthSeconds = List.copyOf(widthSeconds);
    if (levels.isEmpty() || widthSeconds.isEmpty() || pulses < 1 || !(pingSeconds >= 0)) {
      throw new IllegalArgumentException("a calibration makes pulses at some level");
    }
  }

  /** How long the LED is lit by square pulses, in seconds. */
  double pulseSeconds() {
    return levels.size() * pulses * widthSeconds.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** The same with another time for the clocks. */
  public CalibrationPlan withPingSeconds(double seconds) {
    return new CalibrationPlan(levels, widthSeconds, pulses, seconds, sweeps);
  }
}
