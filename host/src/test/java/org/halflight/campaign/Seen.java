package org.halflight.campaign;

import java.util.List;

/**
 * A result, in words of our own.
 *
 * @param rig serial number; empty where it never greeted
 * @param bootCount start of the board
 * @param edges raw edges, by ticks
 * @param marked whether it says that something may be lost or wrong
 * @param outcome in the words of {@link TrueFiring.Kind} and others
 * @param effectiveSeconds 0 where it has no time
 */
record Seen(
    String rig,
    long bootCount,
    List<TrueEdge> edges,
    boolean marked,
    String outcome,
    double effectiveSeconds) {
  Seen {
    edges = List.copyOf(edges);
  }

  long firstTicks() {
    return edges.get(0).ticks();
  }
}
