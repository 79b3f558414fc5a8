package org.halflight.calibration;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LevelPair;
import org.halflight.stats.Sample;

/**
 * The lag of the front end from square pulses of the reference LED, whose true length the rig knows
 * exactly. Behind a one-pole lag {@code tau} a step passes level {@code q} after {@code -tau ln(1 -
 * q)} and falls back past it after {@code -tau ln q}, so a long pulse comes out {@code tau ln((1 -
 * q) / q)} longer: {@code +1.317 tau} at the low Gauss level and {@code -1.317 tau} at the high
 * one.
 *
 * <p>It verifies the chain. It is not subtracted from firings: slow even ramps are hardly touched
 * by a lag, and pulses are not.
 *
 * @param lagSeconds mean of tau over the pulses; below 0 by noise where there is hardly a lag
 * @param spreadSeconds standard deviation of tau over the pulses; not known from one pulse
 * @param commonSeconds by how much both levels together read long: an unlike delay of the two
 *     edges, or levels that are not where they are held to be
 * @param pulses how many it rests on
 */
public record LagEstimate(
    double lagSeconds, Optional<Double> spreadSeconds, double commonSeconds, int pulses) {
  /**
   * One pulse.
   *
   * @param trueSeconds its length by the timer that made it
   * @param lowSeconds time above the low level
   * @param highSeconds time above the high level
   */
  public record SquarePulse(double trueSeconds, double lowSeconds, double highSeconds) {}

  /**
   * Estimates the lag.
   *
   * @param pulses long against the lag, at least ten times
   * @param rising the levels on rising light
   * @param falling the levels on falling light; the same where no hysteresis is known
   * @return empty without pulses
   */
  public static Optional<LagEstimate> of(
      List<SquarePulse> pulses, LevelPair rising, LevelPair falling) {
    if (pulses.isEmpty()) {
      return Optional.empty();
    }
    double low = stretch(rising.low(), falling.low());
    double high = stretch(rising.high(), falling.high());
    Sample lags =
        Sample.of(
            pulses.stream()
                .map(pulse -> (pulse.lowSeconds() - pulse.highSeconds()) / (low - high))
                .toList());
    double lag = lags.mean().get();
    double common =
        pulses.stream()
            .mapToDouble(
                pulse ->
                    (pulse.lowSeconds() + pulse.highSeconds()) / 2
                        - pulse.trueSeconds()
                        - lag * (low + high) / 2)
            .average()
            .orElseThrow();
    return Optional.of(new LagEstimate(lag, lags.sd().known(), common, pulses.size()));
  }

  /** How much longer a long square pulse comes out, in units of the lag. */
  public static double stretch(double risingLevel, double fallingLevel) {
    return Math.log((1 - risingLevel) / fallingLevel);
  }
}
