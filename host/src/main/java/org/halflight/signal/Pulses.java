package org.halflight.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * The edges of one channel of a firing, paired into pulses.
 *
 * @param pulses the whole pulses, by ticks
 * @param startsHigh whether the channel was high before its first edge, so that it begins with a
 *     fall without a rise
 * @param stillHighSince ticks of a last rise that no fall follows
 */
public record Pulses(List<Pulse> pulses, boolean startsHigh, OptionalLong stillHighSince) {
  public Pulses {
    pulses = List.copyOf(pulses);
  }

  /**
   * Pairs the edges of a channel. Of edges to the same level, one behind the other, the first
   * counts; such a firing is marked as {@link Firing.Damage#CONTRADICTION} anyway.
   */
  public static Pulses of(Firing firing, Channel channel) {
    List<Pulse> pulses = new ArrayList<>();
    OptionalLong rise = OptionalLong.empty();
    List<Edge> edges = firing.of(channel);
    for (Edge edge : edges) {
      if (edge.high() && rise.isEmpty()) {
        rise = OptionalLong.of(edge.ticks());
      } else if (!edge.high() && rise.isPresent()) {
        pulses.add(new Pulse(rise.getAsLong(), edge.ticks()));
        rise = OptionalLong.empty();
      }
    }
    return new Pulses(pulses, !edges.isEmpty() && !edges.get(0).high(), rise);
  }

  /** Whether the channel had no edge at all. */
  public boolean isEmpty() {
    return pulses.isEmpty() && !startsHigh && stillHighSince.isEmpty();
  }
}
