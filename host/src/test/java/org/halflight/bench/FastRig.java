package org.halflight.bench;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/**
 * A rig as its lines tell it, whose board counts faster than it says, behind invented delays of a
 * cable. Time goes on by a beat at each step without a line.
 */
final class FastRig implements RigFeed {
  static final double TICKS = 16e6;
  private static final long BEAT = 1L << 22;

  /** Mean delay of a line each way; exponential beyond the least. */
  private static final double DELAY_SECONDS = 200e-6;

  private final double fast;
  private final SplittableRandom random;
  private final Deque<Item> waiting = new ArrayDeque<>();
  private final Deque<Edge> edges = new ArrayDeque<>();
  private final List<Double> pings = new ArrayList<>();
  private double trueSeconds = 1;
  private long nextBeat = BEAT;
  private int levels;
  private int sequence;
  private int commands;
  private boolean closed;

  private record Edge(double trueSeconds, Channel channel, boolean high) {}

  FastRig(String serial, double fastPpm, long seed) {
    this.fast = 1 + fastPpm * 1e-6;
    this.random = new SplittableRandom(seed);
    nextBeat = (ticks(trueSeconds) / BEAT + 1) * BEAT;
    say(
        at ->
            new RigMessage.Greeting(
                at, 1, 16_000_000, "full", 0x7F, serial, 7, "power", "1.0.0", ticks(trueSeconds)));
  }

  /** Straight ramps of 1 ms, so that the effective time is what is asked for. */
  void fire(double effectiveSeconds) {
    double from = trueSeconds + 0.01;
    double low = 0.5 - Math.sqrt(1 / 12.0);
    double ramp = 1e-3;
    edges.add(new Edge(from + low * ramp, Channel.CENTRE_LOW, true));
    edges.add(new Edge(from + (1 - low) * ramp, Channel.CENTRE_HIGH, true));
    edges.add(new Edge(from + effectiveSeconds + low * ramp, Channel.CENTRE_HIGH, false));
    edges.add(new Edge(from + effectiveSeconds + (1 - low) * ramp, Channel.CENTRE_LOW, false));
  }

  /** True times at which a ping reached the board. */
  List<Double> pings() {
    return pings;
  }

  double trueSeconds() {
    return trueSeconds;
  }

  @Override
  public Optional<Item> next() {
    if (waiting.isEmpty() && !closed) {
      double beat = nextBeat / TICKS / fast;
      if (!edges.isEmpty() && edges.peek().trueSeconds() < beat) {
        Edge edge = edges.remove();
        trueSeconds = Math.max(trueSeconds, edge.trueSeconds());
        levels ^= 1 << edge.channel().code();
        say(
            at ->
                new RigMessage.EdgeSeen(
                    at, edge.channel(), edge.high(), (int) ticks(edge.trueSeconds())));
      } else {
        trueSeconds = Math.max(trueSeconds, beat);
        long now = nextBeat;
        nextBeat += BEAT;
        say(at -> new RigMessage.Beat(at, now, levels, 320));
      }
    }
    return Optional.ofNullable(waiting.poll());
  }

  @Override
  public void send(RigCommand command) {
    int number = commands++ & 0xFFFF;
    waiting.add(
        new Item.Line(new BenchEvent.Sent(nanos(trueSeconds), LineCodec.format(number, command))));
    if (command instanceof RigCommand.Ping ping) {
      double reached = trueSeconds + delay();
      pings.add(reached);
      trueSeconds = reached + 50e-6;
      long answered = ticks(trueSeconds);
      say(at -> new RigMessage.Echo(at, ping.token(), ticks(reached), answered));
    }
    say(at -> new RigMessage.Answer(at, number, RigMessage.Result.DONE));
  }

  @Override
  public long nowNanos() {
    return nanos(trueSeconds);
  }

  @Override
  public void close() {
    closed = true;
  }

  private void say(java.util.function.IntFunction<RigMessage> message) {
    String line = LineCodec.format(message.apply(sequence));
    sequence = (sequence + 1) & 0xFFFF;
    waiting.add(new Item.Line(new BenchEvent.Received(nanos(trueSeconds + delay()), line)));
  }

  private double delay() {
    return 100e-6 - DELAY_SECONDS * Math.log(1 - random.nextDouble());
  }

  private long ticks(double seconds) {
    return Math.round(seconds * fast * TICKS);
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
