package org.halflight.calibration;

import java.util.Optional;
import org.halflight.profile.ClockRate;

/**
 * The rate of a clock while measuring, from both sides of the pings of the last two minutes. Not
 * safe for use by several threads.
 */
public final class ClockPairWatch {
  private final ClockWatch received = new ClockWatch(StampSide.HOST_LATE);
  private final ClockWatch sent = new ClockWatch(StampSide.HOST_EARLY);

  /** Adds a stamp that is never early: the host's of what the board sent. */
  public void received(ClockStamp stamp) {
    received.add(stamp);
  }

  /** Adds a stamp that is never late: the host's of what the board got. */
  public void sent(ClockStamp stamp) {
    sent.add(stamp);
  }

  /** Pings that still count. */
  public int pings() {
    return Math.min(received.size(), sent.size());
  }

  /**
   * What they come to.
   *
   * @param hostStandardUncertaintyPpm of the clock of the host
   */
  public LiveClock rate(double hostStandardUncertaintyPpm) {
    ClockFit.Outcome late = received.outcome();
    ClockFit.Outcome early = sent.outcome();
    if (late instanceof ClockFit.TooFew || early instanceof ClockFit.TooFew) {
      return new LiveClock.TooFew(pings(), ClockFit.LEAST);
    }
    Optional<ClockRate> rate = new ClockPair(late, early).rate(hostStandardUncertaintyPpm);
    return rate.isPresent()
        ? new LiveClock.Known(rate.get(), pings(), ((ClockFit.Fitted) late).fit().spanSeconds())
        : new LiveClock.Contradiction(pings());
  }
}
