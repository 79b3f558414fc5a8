package org.halflight.bench;

import java.util.Optional;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;

/** Where the lines of a rig come from, one after the other, and where commands go. */
public interface RigFeed extends AutoCloseable {
  /** Something that came. */
  sealed interface Item {
    /** A line from or to the rig. */
    record Line(BenchEvent event) implements Item {}

    /** The link changed. */
    record Changed(LinkChange change) implements Item {}

    /** A command stays without an answer: it was lost again and again, or there is no rig. */
    record Unanswered(RigCommand command) implements Item {}
  }

  /**
   * The next thing that came, in order. After closing, what had come before is still given.
   *
   * @return empty when nothing came for a short while (at most about 100 ms)
   */
  Optional<Item> next();

  /**
   * Sends a command; what the rig answers comes as lines. A command to a rig that is gone is
   * dropped.
   */
  void send(RigCommand command);

  /** The clock by which lines are stamped, in nanoseconds. */
  long nowNanos();

  @Override
  void close();
}
