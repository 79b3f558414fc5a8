package org.halflight.chart;

import java.util.List;
import java.util.Optional;

/**
 * What one run has at one marked speed.
 *
 * @param firingsStops errors of the timed firings in their order
 * @param mean of those firings that count, empty when none does
 * @param stuckOpen how many releases stayed open
 * @param didNotOpen how many releases did not open
 */
public record RunAtSpeed(
    List<Double> firingsStops, Optional<Mean> mean, int stuckOpen, int didNotOpen) {
  public RunAtSpeed {
    firingsStops = List.copyOf(firingsStops);
    if (!firingsStops.stream().allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("errors are finite numbers");
    }
    if (stuckOpen < 0 || didNotOpen < 0) {
      throw new IllegalArgumentException("counts are 0 or more");
    }
  }

  /** All releases: with a time, stuck open and not opened. */
  public int releases() {
    return firingsStops.size() + stuckOpen + didNotOpen;
  }
}
