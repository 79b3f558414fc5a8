package org.halflight.calibration;

/**
 * Host time less board time as a line of board time.
 *
 * @param slope seconds that the host gains in a second of the board
 * @param interceptSeconds at board time zero
 */
public record ClockLine(double slope, double interceptSeconds) {
  /** The line at a time of the board. */
  public double at(double boardSeconds) {
    return interceptSeconds + slope * boardSeconds;
  }

  /** The same as parts in a million by which the board is fast. */
  public double boardFastPpm() {
    return 1e6 * (1 / (1 + slope) - 1);
  }
}
