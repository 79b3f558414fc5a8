package org.halflight.signal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;

/**
 * What the contact at the wind knob does around firings. Its edges never make, extend or damage a
 * firing: it moves when the film is wound, and a foil that chatters is no reason to doubt the
 * light. Each firing gets those from {@link #BEFORE_SECONDS} before its first light to {@link
 * #AFTER_SECONDS} after it, or around its first edge where no light came; an edge that is near two
 * firings goes to both. For one thread.
 */
final class KnobTrail {
  /** A slow squeeze may unlock the advance so long before first light; our choice. */
  static final double BEFORE_SECONDS = 3;

  /** And so long after it, where the shutter trips first; our choice. */
  static final double AFTER_SECONDS = 1;

  /** A firing that was handed over while its time for edges goes on. */
  private static final class Open {
    private final long firstTicks;
    private final long untilTicks;
    private final List<Edge> later = new ArrayList<>();

    private Open(long firstTicks, long untilTicks) {
      this.firstTicks = firstTicks;
      this.untilTicks = untilTicks;
    }
  }

  private final long beforeTicks;
  private final long afterTicks;
  private final Deque<Edge> recent = new ArrayDeque<>();
  private final List<Open> open = new ArrayList<>();
  private List<FiringGrouper.LateKnob> late = new ArrayList<>();

  /** Of the firing under way. */
  private final List<Edge> around = new ArrayList<>();

  private long aroundTicks;
  private boolean isUnderway;

  KnobTrail(BoardTraits board) {
    beforeTicks = board.rate().ticks(BEFORE_SECONDS);
    afterTicks = board.rate().ticks(AFTER_SECONDS);
  }

  void add(Edge edge) {
    recent.add(edge);
    if (isUnderway && isAround(edge)) {
      around.add(edge);
    }
    for (Open each : open) {
      if (edge.ticks() <= each.untilTicks) {
        each.later.add(edge);
      }
    }
  }

  /** A firing begins, or its first light comes. */
  void begins(long ticks) {
    isUnderway = true;
    aroundTicks = ticks;
    around.clear();
    recent.stream().filter(this::isAround).forEach(around::add);
  }

  private boolean isAround(Edge edge) {
    return edge.ticks() >= aroundTicks - beforeTicks && edge.ticks() <= aroundTicks + afterTicks;
  }

  /**
   * The firing under way is over.
   *
   * @param firstTicks its first edge
   * @return what came of it so far
   */
  List<Edge> ends(long firstTicks) {
    List<Edge> soFar = List.copyOf(around);
    open.add(new Open(firstTicks, aroundTicks + afterTicks));
    around.clear();
    isUnderway = false;
    return soFar;
  }

  /** Nothing more will come from before a time. */
  void passed(long ticks) {
    Iterator<Open> each = open.iterator();
    while (each.hasNext()) {
      Open one = each.next();
      if (one.untilTicks < ticks) {
        each.remove();
        if (!one.later.isEmpty()) {
          late.add(new FiringGrouper.LateKnob(one.firstTicks, List.copyOf(one.later)));
        }
      }
    }
    while (!recent.isEmpty() && recent.peekFirst().ticks() < ticks - beforeTicks) {
      recent.removeFirst();
    }
  }

  /** What came for firings that were handed over, once their time has passed. */
  List<FiringGrouper.LateKnob> drainLate() {
    if (late.isEmpty()) {
      return List.of();
    }
    List<FiringGrouper.LateKnob> taken = late;
    late = new ArrayList<>();
    return taken;
  }

  /** Ticks may start again. */
  void forget() {
    passed(Long.MAX_VALUE);
    recent.clear();
    isUnderway = false;
  }
}
