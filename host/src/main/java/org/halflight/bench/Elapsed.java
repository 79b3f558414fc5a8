package org.halflight.bench;

import org.halflight.rig.RigEvent;

/** Ticks that have gone by on the rig since the first beat that was heard. */
final class Elapsed {
  private long firstTicks = -1;

  /** Ticks from the first beat to this one. */
  long ticks(RigEvent.TimeAt beat) {
    firstTicks = firstTicks < 0 ? beat.ticks() : firstTicks;
    return beat.ticks() - firstTicks;
  }

  /** The next beat is the first one again. */
  void restart() {
    firstTicks = -1;
  }
}
