package org.halflight.session;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * The light of the plateau, as beats bring it: a beat while the shutter stands fully open measures
 * full light again for nothing.
 */
final class PlateauWatch {
  /**
   * The shutter must have been fully open for longer than this: the rig's mean is up to 2 ms old.
   */
  static final double SETTLED_SECONDS = 0.002;

  /** A plateau further than this from the full light that was set is off. */
  static final double OFF_SHARE = 0.05;

  /**
   * From the high level to fully open, as a part of the way from the low level to it, at most: by
   * the area-linear law {@code (1 - q2) / (q2 - q1)} at the Gauss levels.
   */
  private static final double REST_OF_RAMP = 0.366;

  /** Blades that a hand holds open are so by then, whatever level was seen. */
  private static final double OPEN_BY_SECONDS = 0.1;

  /** The last beats of a long opening are enough. */
  private static final int BEATS_KEPT = 8;

  private record LitBeat(long ticks, int sum16) {}

  private final Deque<LitBeat> beats = new ArrayDeque<>();
  private final Deque<LitBeat> lit = new ArrayDeque<>();
  private final Deque<Double> dark = new ArrayDeque<>();

  /** Takes a beat with the light that it brought. */
  void beat(long ticks, int levels, int sum16) {
    if (isAbove(Channel.CENTRE_HIGH, levels)) {
      beats.add(new LitBeat(ticks, sum16));
      if (beats.size() > BEATS_KEPT) {
        beats.remove();
      }
    }
    if (isAbove(Channel.CENTRE_LOW, levels)) {
      lit.add(new LitBeat(ticks, sum16));
      if (lit.size() > BEATS_KEPT) {
        lit.remove();
      }
    } else {
      dark.add(sum16 / 16.0);
      if (dark.size() > BEATS_KEPT) {
        dark.remove();
      }
    }
  }

  private static boolean isAbove(Channel channel, int levels) {
    return (levels >> channel.code() & 1) != 0;
  }

  /** The light of the last beats with the shutter shut, in counts of the converter. */
  List<Double> darkCounts() {
    return List.copyOf(dark);
  }

  /** Ticks start anew. */
  void forget() {
    beats.clear();
    lit.clear();
    dark.clear();
  }

  /**
   * The light of a shutter that was held open, beat by beat, in counts of the converter: also with
   * a rig of one level, and where the light never reached the high one.
   */
  List<Double> heldCounts(Firing firing, TickRate rate) {
    if (!firing.damage().isEmpty()) {
      return List.of();
    }
    List<Pulse> pulses = Pulses.of(firing, Channel.CENTRE_LOW).pulses();
    return lit.stream()
        .filter(
            beat ->
                pulses.stream()
                    .anyMatch(
                        pulse ->
                            beat.ticks() - pulse.startTicks() > rate.ticks(OPEN_BY_SECONDS)
                                && beat.ticks() <= pulse.endTicks()))
        .map(beat -> beat.sum16() / 16.0)
        .toList();
  }

  /** The light of the plateau of a firing that is over, in counts of the converter. */
  OptionalDouble countsOf(Firing firing, TickRate rate) {
    List<LitBeat> own = new ArrayList<>();
    while (!beats.isEmpty() && beats.peek().ticks() <= firing.lastTicks()) {
      own.add(beats.remove());
    }
    if (!firing.damage().isEmpty()) {
      return OptionalDouble.empty();
    }
    List<Pulse> low = Pulses.of(firing, Channel.CENTRE_LOW).pulses();
    List<Pulse> high = Pulses.of(firing, Channel.CENTRE_HIGH).pulses();
    return own.stream()
        .filter(beat -> high.stream().anyMatch(pulse -> isPlateau(beat, pulse, low, rate)))
        .mapToDouble(beat -> beat.sum16() / 16.0)
        .average();
  }

  private static boolean isPlateau(LitBeat beat, Pulse high, List<Pulse> low, TickRate rate) {
    long lowRise =
        low.stream()
            .mapToLong(Pulse::startTicks)
            .filter(ticks -> ticks <= high.startTicks())
            .max()
            .orElse(high.startTicks());
    long fullyOpen =
        high.startTicks() + (long) Math.ceil(REST_OF_RAMP * (high.startTicks() - lowRise));
    return beat.ticks() - fullyOpen > rate.ticks(SETTLED_SECONDS)
        && beat.ticks() <= high.endTicks();
  }

  static boolean isOff(double share) {
    return Math.abs(share - 1) > OFF_SHARE;
  }
}
