package org.halflight.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.PriorityQueue;

/**
 * Edges whose late time has not passed: they come out by ticks, and those of equal ticks as they
 * came. For one thread.
 */
final class PendingEdges {
  private record Waiting(Edge edge, long order) {}

  private static final Comparator<Waiting> BY_TICKS =
      Comparator.comparingLong((Waiting waiting) -> waiting.edge().ticks())
          .thenComparingLong(Waiting::order);

  private final PriorityQueue<Waiting> waiting = new PriorityQueue<>(BY_TICKS);
  private final int[] counts = new int[Channel.values().length];

  /** The latest edge of each channel; means something only while the channel has edges here. */
  private final Edge[] last = new Edge[Channel.values().length];

  private long greatestTicks;
  private long order;

  void add(Edge edge) {
    int code = edge.channel().code();
    greatestTicks = waiting.isEmpty() ? edge.ticks() : Math.max(greatestTicks, edge.ticks());
    if (counts[code] == 0 || last[code].ticks() <= edge.ticks()) {
      last[code] = edge;
    }
    counts[code]++;
    waiting.add(new Waiting(edge, order++));
  }

  Edge remove() {
    Edge edge = waiting.remove().edge();
    counts[edge.channel().code()]--;
    return edge;
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  /** Ticks of the next edge to come out; the greatest long where there is none. */
  long nextTicks() {
    return waiting.isEmpty() ? Long.MAX_VALUE : waiting.peek().edge().ticks();
  }

  OptionalLong firstTicks() {
    return waiting.isEmpty() ? OptionalLong.empty() : OptionalLong.of(nextTicks());
  }

  /** Ticks of the latest edge; the least long where there is none. */
  long greatestTicks() {
    return waiting.isEmpty() ? Long.MIN_VALUE : greatestTicks;
  }

  /** The latest edge of a channel. */
  Optional<Edge> last(Channel channel) {
    return counts[channel.code()] == 0 ? Optional.empty() : Optional.of(last[channel.code()]);
  }

  boolean isMoreThanNoise() {
    return waiting.size() > counts[Channel.CLICK.code()] + counts[Channel.CONTACT.code()];
  }

  int centreEdges() {
    return counts[Channel.CENTRE_LOW.code()] + counts[Channel.CENTRE_HIGH.code()];
  }

  List<Edge> inOrder() {
    List<Waiting> sorted = new ArrayList<>(waiting);
    sorted.sort(BY_TICKS);
    return sorted.stream().map(Waiting::edge).toList();
  }
}
