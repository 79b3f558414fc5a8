package org.halflight.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A firing as it happened.
 *
 * @param edges all its edges, by ticks
 * @param outcome the name of what it must come to
 * @param seconds its effective time, where it has one
 */
record TrueFiring(List<TrueEdge> edges, String outcome, OptionalDouble seconds) {
  static final double TICKS_PER_SECOND = 16e6;
  static final long MS = 16_000;

  /** An edge, with channel codes of docs/protocol.md. */
  record TrueEdge(int channel, boolean high, long ticks) {}

  /** What a firing is like. */
  enum Kind {
    PLAIN,
    PRESSED,
    DOUBLE,
    PRESS_WITHOUT_LIGHT,
    NEVER_FULLY_OPEN,
    SELF_TIMER,
    LONG
  }

  private static final int LOW = 0;
  private static final int HIGH = 1;
  private static final int OUTER_A = 2;
  private static final int CONTACT = 4;
  private static final int CLICK = 5;
  private static final int RELEASE = 6;

  /** A firing of a kind whose first edge is at a time; its light lasts so long where it has one. */
  static TrueFiring of(Kind kind, long at, long width) {
    List<TrueEdge> edges = new ArrayList<>();
    long ramp = 8000;
    double seconds = (width + width - 2.0 * ramp) / 2 / TICKS_PER_SECOND;
    switch (kind) {
      case PLAIN -> light(edges, at, width, ramp);
      case LONG -> light(edges, at, width, ramp);
      case PRESSED -> {
        edges.add(new TrueEdge(RELEASE, true, at));
        long from = at + 30 * MS;
        edges.add(new TrueEdge(CLICK, true, from - 5000));
        edges.add(new TrueEdge(CLICK, false, from - 3000));
        light(edges, from, width, ramp);
        edges.add(new TrueEdge(OUTER_A, true, from + 5000));
        edges.add(new TrueEdge(CONTACT, true, from + 9000));
        edges.add(new TrueEdge(CONTACT, false, from + width - 9000));
        edges.add(new TrueEdge(OUTER_A, false, from + width - 5000));
        edges.add(new TrueEdge(RELEASE, false, from + width + 40 * MS));
      }
      case DOUBLE -> {
        light(edges, at, width, ramp);
        light(edges, at + width + 45 * MS, width * 3 / 4, ramp);
      }
      case PRESS_WITHOUT_LIGHT -> {
        edges.add(new TrueEdge(RELEASE, true, at));
        edges.add(new TrueEdge(RELEASE, false, at + 60 * MS));
      }
      case NEVER_FULLY_OPEN -> {
        edges.add(new TrueEdge(RELEASE, true, at));
        edges.add(new TrueEdge(LOW, true, at + 20 * MS));
        edges.add(new TrueEdge(LOW, false, at + 20 * MS + width));
        edges.add(new TrueEdge(RELEASE, false, at + 70 * MS + width));
      }
      case SELF_TIMER -> {
        edges.add(new TrueEdge(RELEASE, true, at));
        edges.add(new TrueEdge(RELEASE, false, at + 90 * MS));
        light(edges, at + 3000 * MS, width, ramp);
      }
    }
    edges.sort((a, b) -> Long.compare(a.ticks(), b.ticks()));
    String outcome =
        switch (kind) {
          case PLAIN, PRESSED, SELF_TIMER, LONG -> "TIMED";
          case DOUBLE -> "DOUBLE";
          case PRESS_WITHOUT_LIGHT -> "DID_NOT_OPEN";
          case NEVER_FULLY_OPEN -> "NEVER_FULLY_OPEN";
        };
    return new TrueFiring(
        List.copyOf(edges),
        outcome,
        outcome.equals("TIMED") ? OptionalDouble.of(seconds) : OptionalDouble.empty());
  }

  private static void light(List<TrueEdge> edges, long at, long width, long ramp) {
    edges.add(new TrueEdge(LOW, true, at));
    edges.add(new TrueEdge(HIGH, true, at + ramp));
    edges.add(new TrueEdge(HIGH, false, at + width - ramp));
    edges.add(new TrueEdge(LOW, false, at + width));
  }

  /** The light of a self-timer, which comes by itself, seconds after the press. */
  Optional<TrueFiring> lightAlone() {
    for (int i = 1; i < edges.size(); i++) {
      if (edges.get(i).ticks() - edges.get(i - 1).ticks() > 2000 * MS) {
        return Optional.of(new TrueFiring(edges.subList(i, edges.size()), outcome, seconds));
      }
    }
    return Optional.empty();
  }

  long lastTicks() {
    return edges.get(edges.size() - 1).ticks();
  }
}
