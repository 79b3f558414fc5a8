package org.halflight.extratest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/** A slow squeeze as the edges of a rig, from the times of what happened in it, in seconds. */
public final class RawSqueeze {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** Keeps ticks above zero. */
  private static final double START = 10;

  /** A click rings for this long, in pulses of this length. */
  private static final double RINGS = 0.0025;

  private static final double PULSE = 0.0002;

  private final List<Edge> light = new ArrayList<>();
  private final List<Edge> others = new ArrayList<>();
  private final List<Edge> knob = new ArrayList<>();

  public RawSqueeze(double firstLight, double lastLight) {
    light.add(edge(Channel.CENTRE_LOW, true, firstLight));
    light.add(edge(Channel.CENTRE_HIGH, true, firstLight + 0.0005));
    light.add(edge(Channel.CENTRE_HIGH, false, lastLight - 0.0005));
    light.add(edge(Channel.CENTRE_LOW, false, lastLight));
  }

  /** A sound. */
  public void click(double seconds) {
    for (double at = 0; at < RINGS; at += 2 * PULSE) {
      others.add(edge(Channel.CLICK, true, seconds + at));
      others.add(edge(Channel.CLICK, false, seconds + at + PULSE));
    }
  }

  /** The foil leaves its wire. */
  public void knobMoves(double seconds) {
    knob.add(edge(Channel.KNOB, false, seconds));
  }

  /** A button that is wired. */
  public void button(double pressed, double returned) {
    others.add(edge(Channel.RELEASE, true, pressed));
    others.add(edge(Channel.RELEASE, false, returned));
  }

  /** When the advance unlocked, as the program has it. */
  public UnlockSign sign() {
    List<Edge> all = new ArrayList<>(light);
    all.addAll(others);
    all.sort(Comparator.comparingLong(Edge::ticks));
    return UnlockSign.of(new Firing(all, List.of(), knob), new Firing(light, List.of()), RATE);
  }

  /** As {@link #sign}, as a number alone. */
  public OptionalDouble aheadSeconds() {
    return sign().aheadSeconds();
  }

  private static Edge edge(Channel channel, boolean high, double seconds) {
    return new Edge(channel, high, RATE.ticks(START + seconds));
  }
}
