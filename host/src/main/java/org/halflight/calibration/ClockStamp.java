package org.halflight.calibration;

/**
 * One moment, told by both clocks.
 *
 * @param boardSeconds by the board, at its nominal rate
 * @param hostSeconds by the host
 */
public record ClockStamp(double boardSeconds, double hostSeconds) {
  public ClockStamp {
    if (!Double.isFinite(boardSeconds) || !Double.isFinite(hostSeconds)) {
      throw new IllegalArgumentException("not a time: " + boardSeconds + ", " + hostSeconds);
    }
  }

  /** How far the host is ahead. */
  double differenceSeconds() {
    return hostSeconds - boardSeconds;
  }
}
