package org.halflight.bench;

import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/** What has gone by on the rig since the first beat that was heard. */
final class Elapsed {
  private long firstTicks = -1;

  /**
   * Seconds from the first beat to this one.
   *
   * @param rate how fast the rig counts
   */
  double seconds(RigEvent.TimeAt beat, TickRate rate) {
    firstTicks = firstTicks < 0 ? beat.ticks() : firstTicks;
    return rate.seconds(beat.ticks() - firstTicks);
  }

  /** The next beat is the first one again. */
  void restart() {
    firstTicks = -1;
  }
}
