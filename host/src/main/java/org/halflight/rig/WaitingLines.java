package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** What waits for whole ticks, in the order in which it came. For one thread. */
final class WaitingLines {
  /** A rig cannot send as many edges between two beats; what exceeds it is noise. */
  private static final int LINES_MOST = 4096;

  /** What waits weighs no more than this: an edge 1, a curve as many as it has values. */
  private static final int WEIGHT_MOST = 1 << 16;

  /**
   * So many missing lines can hide more time than the low half of ticks tells apart: each may have
   * been a beat.
   */
  private static final int MISSING_MOST = 400;

  /**
   * @param line empty for an event that has no ticks of its own
   */
  private record Waiting(Consumer<List<RigEvent>> placed, Optional<String> line, int weight) {}

  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private int weight;
  private int missing;

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  /**
   * Puts something behind the others that has ticks of its own.
   *
   * @param placed tells it once whole ticks are known
   * @return false when there is no room for it
   */
  boolean add(Consumer<List<RigEvent>> placed, String line, int itsWeight) {
    if (waiting.size() >= LINES_MOST || weight + itsWeight > WEIGHT_MOST) {
      return false;
    }
    waiting.addLast(new Waiting(placed, Optional.of(line), itsWeight));
    weight += itsWeight;
    return true;
  }

  /**
   * Puts an event behind the others that has no ticks of its own.
   *
   * @return false when there is no room for it
   */
  boolean add(RigEvent event) {
    if (waiting.size() >= 2 * LINES_MOST) {
      return false;
    }
    waiting.addLast(new Waiting(placed -> placed.add(event), Optional.empty(), 0));
    return true;
  }

  /**
   * Lines are missing behind those that wait.
   *
   * @return whether the next whole ticks may be too far from these
   */
  boolean missing(int lines) {
    missing += Math.min(lines, MISSING_MOST);
    return missing >= MISSING_MOST;
  }

  /** Whole ticks are known. */
  void place(List<RigEvent> events) {
    while (!waiting.isEmpty()) {
      waiting.removeFirst().placed().accept(events);
    }
    clear();
  }

  /**
   * Nothing will ever place what waits. Events without ticks are told all the same.
   *
   * @return the lines that are left out
   */
  List<String> drop(List<RigEvent> events) {
    // What waited among the lines does not speak of them: they go missing only now.
    waiting.stream()
        .filter(each -> each.line().isEmpty())
        .forEach(each -> each.placed().accept(events));
    List<String> lines = waiting.stream().flatMap(each -> each.line().stream()).toList();
    clear();
    return lines;
  }

  private void clear() {
    waiting.clear();
    weight = 0;
    missing = 0;
  }
}
