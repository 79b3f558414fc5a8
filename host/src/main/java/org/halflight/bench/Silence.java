package org.halflight.bench;

import java.util.function.LongSupplier;

/**
 * Whether a rig has no more to say: by the clock of the feed and by how often nothing came, since a
 * busy computer lets time pass and a clock may stand. For one thread.
 */
final class Silence {
  /** A clock that stands does not hold anybody up for ever. */
  private static final int STEPS_MOST = 600;

  private final LongSupplier nanos;
  private final long limitNanos;
  private final int stepsLeast;
  private long sinceNanos;
  private int steps;

  /**
   * @param limitNanos how long it has to be silent
   * @param stepsLeast how often nothing has to come meanwhile
   */
  Silence(LongSupplier nanos, long limitNanos, int stepsLeast) {
    this.nanos = nanos;
    this.limitNanos = limitNanos;
    this.stepsLeast = stepsLeast;
    sinceNanos = nanos.getAsLong();
  }

  /** Something came, or nothing did for a short while. */
  void step(boolean nothingCame) {
    if (nothingCame) {
      steps++;
    } else {
      steps = 0;
      sinceNanos = nanos.getAsLong();
    }
  }

  boolean isOver() {
    return steps >= STEPS_MOST
        || (steps >= stepsLeast && nanos.getAsLong() - sinceNanos >= limitNanos);
  }
}
