package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/** Finds what a channel saw of the pulses that the board made. */
public final class PulseMatch {
  /**
   * An edge later than this after the LED belongs to something else. The ramped drive needs some
   * milliseconds; between pulses the LED stays off for 20 ms at least.
   */
  public static final double GREATEST_DELAY_SECONDS = 8e-3;

  /** What came of it. */
  public sealed interface Outcome {}

  /**
   * The channel saw pulses.
   *
   * @param pulses those it saw whole
   * @param missed how many it did not
   */
  public record Matched(List<SeenPulse> pulses, int missed) implements Outcome {
    public Matched {
      pulses = List.copyOf(pulses);
    }
  }

  /** Not one edge: LED unplugged, sensor covered, or threshold above its light. */
  public record NothingSeen(Channel channel) implements Outcome {}

  /** It goes dark when the LED goes on: the comparator's inputs or the LED are swapped. */
  public record Reversed(Channel channel) implements Outcome {}

  /** Edges, but no more than half of the pulses fit them: other light, or a loose wire. */
  public record Disturbed(Channel channel, int missed) implements Outcome {}

  private PulseMatch() {}

  /**
   * @param edges of any channel, in order of time
   * @param riseLevel where the channel switches on rising light, as a fraction of the LED's light
   * @param fallLevel the same on falling light
   */
  public static Outcome of(
      List<MadePulse> made,
      List<Edge> edges,
      Channel channel,
      double riseLevel,
      double fallLevel,
      TickRate rate) {
    long window = rate.ticks(GREATEST_DELAY_SECONDS);
    List<Edge> own = edges.stream().filter(edge -> edge.channel() == channel).toList();
    List<SeenPulse> seen = new ArrayList<>();
    int reversed = 0;
    for (MadePulse pulse : made) {
      long on = pulse.beginTicks();
      long off = pulse.endTicks();
      List<Edge> atOn =
          own.stream()
              .filter(edge -> within(edge, on, Math.min(on + window, off + window)))
              .toList();
      List<Edge> atOff = own.stream().filter(edge -> within(edge, off, off + window)).toList();
      List<Edge> rises = atOn.stream().filter(Edge::high).toList();
      List<Edge> falls = atOff.stream().filter(edge -> !edge.high()).toList();
      boolean fallsFirst = !atOn.isEmpty() && !atOn.get(0).high();
      if (fallsFirst && atOff.stream().anyMatch(Edge::high)) {
        reversed++;
      } else if (rises.size() == 1 && falls.size() == 1) {
        seen.add(
            new SeenPulse(
                channel,
                riseLevel,
                fallLevel,
                rate.seconds(off - on),
                rate.seconds(rises.get(0).ticks() - on),
                rate.seconds(falls.get(0).ticks() - off)));
      }
    }
    int missed = made.size() - seen.size();
    if (own.isEmpty()) {
      return new NothingSeen(channel);
    }
    if (2 * reversed > made.size()) {
      return new Reversed(channel);
    }
    return 2 * missed >= made.size() ? new Disturbed(channel, missed) : new Matched(seen, missed);
  }

  private static boolean within(Edge edge, long from, long to) {
    return edge.ticks() >= from && edge.ticks() <= to;
  }
}
