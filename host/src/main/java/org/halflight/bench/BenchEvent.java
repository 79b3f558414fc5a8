package org.halflight.bench;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.halflight.rig.RigLine;

/**
 * Something that happened at the bench, as a session file keeps it: all that results depend on, in
 * order.
 *
 * <p>Live, replayed and practice work all turn these same events into results, so they cannot
 * differ.
 */
public sealed interface BenchEvent {
  /**
   * When, in nanoseconds of a host clock that never runs back, counted from the start of the
   * session. One thing alone hangs on it, live and in replay alike: an edge is left out that came
   * before it can have happened. No time is worked out from it.
   */
  long hostNanos();

  /** A line that came from the rig. */
  record Received(long hostNanos, RigLine rigLine) implements BenchEvent {
    /**
     * A line that nobody has parsed yet.
     *
     * @param line without its line end, damaged or not
     */
    public Received(long hostNanos, String line) {
      this(hostNanos, RigLine.of(line));
    }

    /** The line without its line end, damaged or not. */
    public String line() {
      return rigLine.text();
    }
  }

  /** A line that went to the rig. */
  record Sent(long hostNanos, String line) implements BenchEvent {}

  /**
   * Something the host or the person did.
   *
   * @param kind what, one word of a-z and hyphens
   * @param values its values by name, in order
   * @param number counts the marks of a session file from 1; 0 for a mark that has none: it was not
   *     written yet, or stands in a file of the first form
   */
  record Mark(long hostNanos, String kind, Map<String, String> values, long number)
      implements BenchEvent {
    public Mark {
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** A mark that has no number. */
    public Mark(long hostNanos, String kind, Map<String, String> values) {
      this(hostNanos, kind, values, 0);
    }

    /** The same mark with a number. */
    public Mark numbered(long itsNumber) {
      return new Mark(hostNanos, kind, values, itsNumber);
    }
  }
}
