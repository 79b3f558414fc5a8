package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/**
 * From crossings to edges as the board stamps them: the low level by hardware capture, exact to the
 * tick in which the edge falls (rounded up, as a latch does); every other input by a look in
 * software, up to {@value #LOOK_TICKS} ticks later.
 */
public final class EdgeStamps {
  /** The longest wait for the next look of the software, in ticks. */
  public static final int LOOK_TICKS = 4;

  private final TickRate rate;
  private final SeededDraws draws;

  /**
   * @param rate of the board
   * @param draws for the looks of the software
   */
  public EdgeStamps(TickRate rate, SeededDraws draws) {
    this.rate = rate;
    this.draws = draws;
  }

  /** The stamp of one change at a time after {@code startTicks}. */
  public long stamp(Channel channel, long startTicks, double seconds) {
    long ticks = startTicks + (long) Math.ceil(seconds * rate.ticksPerSecond());
    return channel == Channel.CENTRE_LOW ? ticks : ticks + draws.upTo(LOOK_TICKS);
  }

  /**
   * The edges of one channel.
   *
   * @param channel which
   * @param crossings alternating, by time
   * @param startTicks ticks at time 0 of the crossings
   */
  public List<Edge> edges(Channel channel, List<Crossing> crossings, long startTicks) {
    List<Edge> edges = new ArrayList<>();
    long last = Long.MIN_VALUE;
    for (Crossing crossing : crossings) {
      // Two edges of one pin are never stamped with the same look.
      long ticks = Math.max(last + 1, stamp(channel, startTicks, crossing.seconds()));
      edges.add(new Edge(channel, crossing.rising(), ticks));
      last = ticks;
    }
    return edges;
  }
}
