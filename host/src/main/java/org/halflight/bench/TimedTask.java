package org.halflight.bench;

import java.util.function.DoubleConsumer;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/** A task that goes on for some seconds of rig time. */
abstract class TimedTask implements RigTask {
  private final double seconds;
  private final DoubleConsumer share;
  private final Elapsed elapsed = new Elapsed();

  /**
   * @param share hears what part of it is over, 0 to 1
   */
  TimedTask(double seconds, DoubleConsumer share) {
    this.seconds = seconds;
    this.share = share;
  }

  @Override
  public final State onEvent(RigEvent event, TickRate rate) {
    onEvent(event);
    if (!(event instanceof RigEvent.TimeAt beat)) {
      return State.UNDER_WAY;
    }
    double gone = elapsed.seconds(beat, rate) / seconds;
    share.accept(Math.min(1, gone));
    return gone >= 1 ? State.DONE : State.UNDER_WAY;
  }

  /** Hears what the rig says meanwhile. */
  abstract void onEvent(RigEvent event);

  @Override
  public final double patienceSeconds(TickRate rate) {
    return 4 + 1.5 * seconds;
  }
}
