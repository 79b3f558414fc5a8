package org.halflight.calibration;

import org.halflight.profile.ClockRate;

/** What is known of the board's clock while measuring. */
public sealed interface LiveClock {
  /** Nobody pings here, such as from a file. */
  record NotWatched() implements LiveClock {}

  /** The practice rig goes by invented time, which the host's clock says nothing about. */
  record NotComparable() implements LiveClock {}

  /**
   * No rate yet.
   *
   * @param pings that were answered within the last two minutes
   * @param wanted how many it takes
   */
  record TooFew(int pings, int wanted) implements LiveClock {}

  /**
   * The pings contradict each other: a host under load, or stamps of another clock.
   *
   * @param pings how many
   */
  record Contradiction(int pings) implements LiveClock {}

  /**
   * A rate.
   *
   * @param rate with the doubt of the host's own clock in its uncertainty
   * @param pings that it is from
   * @param spanSeconds from the first to the last of them, by the board
   */
  record Known(ClockRate rate, int pings, double spanSeconds) implements LiveClock {}
}
