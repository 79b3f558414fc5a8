package org.halflight.session;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** Something that a session file keeps, in the order in which it happened. */
public sealed interface SessionEvent {
  /**
   * Host time of the event: nanoseconds of a clock that never runs back, from the start of the
   * file.
   */
  long hostNanos();

  /** A line that came from the rig, without its line end, damaged or not. */
  record Received(long hostNanos, String line) implements SessionEvent {
    public Received {
      Objects.requireNonNull(line);
    }
  }

  /** A line that went to the rig. */
  record Sent(long hostNanos, String line) implements SessionEvent {
    public Sent {
      Objects.requireNonNull(line);
    }
  }

  /**
   * Something the host or the person did that results depend on.
   *
   * @param kind what, one word
   * @param values its values by name, in order
   */
  record Mark(long hostNanos, String kind, Map<String, String> values) implements SessionEvent {
    public Mark {
      Objects.requireNonNull(kind);
      values = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }
  }
}
