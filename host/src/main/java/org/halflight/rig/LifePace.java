package org.halflight.rig;

import org.halflight.signal.BoardTraits;
import org.halflight.time.TickRate;

/**
 * Whether a line came before it can have happened, by the clock of the host. Lateness says nothing:
 * a cable, a driver or a busy computer may hold a line back for any time. Earliness does, as soon
 * as the rig is known to keep pace with the host: its last beats all came as soon as the soonest,
 * but for what a driver holds them back. A rig of practice or simulation whose time runs by itself
 * never is, and nothing of it is called early.
 *
 * <p>The times are those that stand in the session file, so live and replay find the same. For one
 * thread.
 */
final class LifePace {
  /** Beats in a row that must have kept pace: 2 s of life. */
  private static final int BEATS = 8;

  /**
   * How much sooner than the soonest beat a line may come. Serial adapters hold bytes back for up
   * to 16 ms, operating systems for as long again, and the clocks run apart by what {@link #DRIFT}
   * allows; our choice.
   */
  static final long SLACK_NANOS = 50_000_000;

  /** How far the clocks may run apart, as a share: ceramic resonators are this good. */
  private static final double DRIFT = 0.005;

  private TickRate rate = BoardTraits.USUAL.rate();
  private boolean begun;
  private long originTicks;
  private long originNanos;

  /** Host time less rig time at the soonest beat; what is above it is delay. */
  private double soonestNanos;

  private long lastNanos;
  private int kept;

  /** The rig counts so fast. */
  void rate(TickRate known) {
    if (!rate.equals(known)) {
      rate = known;
      forget();
    }
  }

  /** A beat came. */
  void beat(long ticks, long nanos) {
    if (!begun) {
      begun = true;
      originTicks = ticks;
      originNanos = nanos;
      soonestNanos = 0;
      kept = 0;
      lastNanos = nanos;
      return;
    }
    double offset = offset(ticks, nanos);
    soonestNanos += DRIFT * Math.max(0, nanos - lastNanos);
    lastNanos = nanos;
    kept = Math.abs(offset - soonestNanos) <= SLACK_NANOS ? kept + 1 : 0;
    soonestNanos = Math.min(soonestNanos, offset);
  }

  /** Whether a line that came now cannot be of so late a time. */
  boolean isTooEarly(long ticks, long nanos) {
    return kept >= BEATS && offset(ticks, nanos) < soonestNanos - SLACK_NANOS;
  }

  /** Time has passed that nobody saw, or ticks mean something else now. */
  void forget() {
    begun = false;
    kept = 0;
  }

  private double offset(long ticks, long nanos) {
    return (double) (nanos - originNanos) - 1e9 * rate.seconds(ticks - originTicks);
  }
}
