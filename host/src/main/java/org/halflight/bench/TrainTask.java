package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Gathers the rising edges of one input for a while. */
final class TrainTask implements RigTask {
  private final Channel channel;
  private final double seconds;
  private final DoubleConsumer share;
  private final List<Long> rises = new ArrayList<>();
  private long firstTicks = -1;

  TrainTask(Channel channel, double seconds, DoubleConsumer share) {
    this.channel = channel;
    this.seconds = seconds;
    this.share = share;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.AskStatus();
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.EdgeAt edge
        && edge.edge().channel() == channel
        && edge.edge().high()) {
      rises.add(edge.edge().ticks());
    } else if (event instanceof RigEvent.TimeAt time) {
      firstTicks = firstTicks < 0 ? time.ticks() : firstTicks;
      double gone = rate.seconds(time.ticks() - firstTicks) / seconds;
      share.accept(Math.min(1, gone));
      return gone >= 1 ? State.DONE : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  @Override
  public double patienceSeconds(TickRate rate) {
    return 4 + 1.5 * seconds;
  }

  /**
   * Ticks of the edges, rising.
   *
   * @param leastTicks an edge sooner than this behind the one before is chatter of that one
   */
  long[] rises(long leastTicks) {
    List<Long> kept = new ArrayList<>();
    rises.stream()
        .sorted()
        .forEach(
            ticks -> {
              if (kept.isEmpty() || ticks - kept.get(kept.size() - 1) >= leastTicks) {
                kept.add(ticks);
              }
            });
    return kept.stream().mapToLong(Long::longValue).toArray();
  }
}
