package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;

/**
 * Holds the levels in beats against the edges that were seen.
 *
 * <p>A beat shows the levels at its own ticks. Its line may come behind lines of later edges (edges
 * go first) and, as channels come up to 20 ms out of order, before lines of earlier ones. So a beat
 * is judged only when a line has come that is 20 ms later, and then against the edges up to its
 * ticks. Where an edge lies within a millisecond of the beat either level is right, since ticks and
 * levels of a beat are not read in the same instant; a level that stays wrong shows in the next.
 *
 * <p>For one thread.
 */
final class LevelWitness {
  /** 20 ms at 16 MHz: how far out of order lines may come. */
  static final long DISORDER_TICKS = 320_000;

  /** 1 ms at 16 MHz. */
  static final long EITHER_LEVEL_TICKS = 16_000;

  private record Shown(long ticks, int levels) {}

  /** The edges of one channel since the last judged beat, and the level before them if known. */
  private static final class History {
    private Optional<Boolean> before = Optional.empty();
    private final Deque<Edge> edges = new ArrayDeque<>();

    Optional<Boolean> latest() {
      return edges.isEmpty() ? before : Optional.of(edges.getLast().high());
    }

    /** Whether the channel may have stood at a level at a time, as far as its edges tell. */
    boolean allows(boolean high, long ticks) {
      Optional<Boolean> level = before;
      for (Edge edge : edges) {
        if (edge.ticks() < ticks - EITHER_LEVEL_TICKS) {
          level = Optional.of(edge.high());
        }
      }
      return level.isEmpty()
          || level.get() == high
          || edges.stream()
              .anyMatch(
                  edge ->
                      edge.high() == high && Math.abs(edge.ticks() - ticks) <= EITHER_LEVEL_TICKS);
    }

    /** Forgets the edges up to a time, keeping the level they led to. */
    void settle(long ticks) {
      while (!edges.isEmpty() && edges.getFirst().ticks() <= ticks) {
        before = Optional.of(edges.removeFirst().high());
      }
    }
  }

  private final Map<Channel, History> histories = new EnumMap<>(Channel.class);
  private final Deque<Shown> unjudged = new ArrayDeque<>();

  LevelWitness() {
    forget();
  }

  /** Forgets everything: levels are unknown until the next beat or edge. */
  void forget() {
    unjudged.clear();
    for (Channel channel : Channel.values()) {
      histories.put(channel, new History());
    }
  }

  /** Takes an edge, and says whether its channel was at that level already. */
  boolean isDoubled(Edge edge) {
    History history = histories.get(edge.channel());
    boolean doubled = history.latest().filter(level -> level == edge.high()).isPresent();
    history.edges.addLast(edge);
    return doubled;
  }

  /** Takes the levels of a beat, to be judged later. */
  void shown(long ticks, int levels) {
    unjudged.addLast(new Shown(ticks, levels));
  }

  /**
   * Judges the beats that all edges have come for.
   *
   * @param ticks of a line that came just now
   * @return the channels that disagree, once for each beat
   */
  List<Channel> judge(long ticks) {
    List<Channel> disagreeing = new ArrayList<>();
    while (!unjudged.isEmpty() && unjudged.getFirst().ticks() + DISORDER_TICKS <= ticks) {
      Shown shown = unjudged.removeFirst();
      histories.forEach(
          (channel, history) -> {
            boolean high = (shown.levels() >> channel.code() & 1) == 1;
            boolean agrees = history.allows(high, shown.ticks());
            history.settle(shown.ticks());
            if (!agrees) {
              disagreeing.add(channel);
            }
            // From here on the beat is believed, so that one lost edge is told once.
            if (!agrees || history.before.isEmpty()) {
              history.before = Optional.of(high);
            }
          });
    }
    return disagreeing;
  }
}
