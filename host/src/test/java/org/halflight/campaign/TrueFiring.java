package org.halflight.campaign;

import java.util.List;

/**
 * One firing of an invented shutter, as it happened.
 *
 * @param kind what it was
 * @param bootCount start of the board at which it was fired
 * @param edges all of them, by ticks
 * @param effectiveSeconds mean of the times above the two levels, with bounce; 0 where it was not
 *     timed
 */
record TrueFiring(Kind kind, long bootCount, List<TrueEdge> edges, double effectiveSeconds) {
  /** What a firing was; the words are those of the tables. */
  enum Kind {
    TIMED,
    DOUBLE,
    NEVER_FULLY_OPEN,
    DID_NOT_OPEN,
    NOT_A_SHUTTER_EVENT
  }

  TrueFiring {
    edges = List.copyOf(edges);
  }

  long firstTicks() {
    return edges.get(0).ticks();
  }

  long lastTicks() {
    return edges.get(edges.size() - 1).ticks();
  }
}
