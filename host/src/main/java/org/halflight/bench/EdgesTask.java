package org.halflight.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.Predicate;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Edge;

/** Gathers edges for a while. */
final class EdgesTask extends TimedTask {
  private final Predicate<Edge> wanted;
  private final List<Edge> edges = new ArrayList<>();

  /**
   * @param wanted which edges are gathered
   */
  EdgesTask(Predicate<Edge> wanted, double seconds, DoubleConsumer share) {
    super(seconds, share);
    this.wanted = wanted;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.AskStatus();
  }

  @Override
  void onEvent(RigEvent event) {
    if (event instanceof RigEvent.EdgeAt at && wanted.test(at.edge())) {
      edges.add(at.edge());
    }
  }

  /** The edges in order of time: those of two channels come a little out of order. */
  List<Edge> edges() {
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }
}
