package org.halflight.bench;

import java.util.function.DoubleConsumer;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/** A task that goes on for some seconds of rig time. */
abstract class TimedTask implements RigTask {
  private final double seconds;
  private final TickRate rate;
  private final DoubleConsumer share;
  private final Elapsed elapsed = new Elapsed();

  /**
   * @param rate of the rig's clock
   * @param share hears what part of it is over, 0 to 1
   */
  TimedTask(double seconds, TickRate rate, DoubleConsumer share) {
    this.seconds = seconds;
    this.rate = rate;
    this.share = share;
  }

  @Override
  public final State onEvent(RigEvent event) {
    heard(event);
    if (!(event instanceof RigEvent.TimeAt beat)) {
      return State.UNDER_WAY;
    }
    double gone = rate.seconds(elapsed.ticks(beat)) / seconds;
    share.accept(Math.min(1, gone));
    return gone >= 1 ? State.DONE : State.UNDER_WAY;
  }

  /** Hears what the rig says meanwhile. */
  abstract void heard(RigEvent event);

  @Override
  public final double patienceSeconds() {
    return 4 + 1.5 * seconds;
  }
}
