package org.halflight.rig.practice;

import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * What is still to happen in virtual time. Things due at the same tick happen in the order in which
 * they were planned, so that a practice session is the same each time.
 */
final class Schedule {
  private record Entry(long ticks, long order, Runnable action) {}

  private final PriorityQueue<Entry> entries =
      new PriorityQueue<>(Comparator.comparingLong(Entry::ticks).thenComparingLong(Entry::order));
  private long planned;

  void at(long ticks, Runnable action) {
    entries.add(new Entry(ticks, planned++, action));
  }

  /** Ticks of the next thing to happen; the greatest long when there is none. */
  long nextTicks() {
    Entry next = entries.peek();
    return next == null ? Long.MAX_VALUE : next.ticks();
  }

  /** Lets the next thing happen. */
  void runNext() {
    entries.remove().action().run();
  }
}
