package org.halflight.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/** Gathers the edges of the centre sensor for a while. */
final class DiscEdgesTask implements RigTask {
  private final double seconds;
  private final DoubleConsumer share;
  private final List<Edge> edges = new ArrayList<>();
  private long firstTicks = -1;

  DiscEdgesTask(double seconds, DoubleConsumer share) {
    this.seconds = seconds;
    this.share = share;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.AskStatus();
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.EdgeAt at && isCentre(at.edge().channel())) {
      edges.add(at.edge());
    } else if (event instanceof RigEvent.TimeAt time) {
      firstTicks = firstTicks < 0 ? time.ticks() : firstTicks;
      double gone = rate.seconds(time.ticks() - firstTicks) / seconds;
      share.accept(Math.min(1, gone));
      return gone >= 1 ? State.DONE : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  private static boolean isCentre(Channel channel) {
    return channel == Channel.CENTRE_LOW || channel == Channel.CENTRE_HIGH;
  }

  @Override
  public double patienceSeconds(TickRate rate) {
    return 4 + 1.5 * seconds;
  }

  /** The edges in order of time: those of two channels come a little out of order. */
  List<Edge> edges() {
    return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
  }
}
