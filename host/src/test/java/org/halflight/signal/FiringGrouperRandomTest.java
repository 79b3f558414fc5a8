package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

/** Firings made up at random, jumbled as the wire may jumble them, come back as they were made. */
class FiringGrouperRandomTest {
  private static final long QUIET = 4_800_000;

  private record Sent(Edge edge, long arrivalTicks) {}

  @Test
  void firingsComeBackWhateverTheOrderOnTheWire(@Seed long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 200; round++) {
      oneRound(random, "seed " + seed + ", round " + round);
    }
  }

  private static void oneRound(Random random, String name) {
    List<List<Edge>> made = new ArrayList<>();
    long ticks = random.nextLong(1L << 33);
    for (int i = 0; i < 20; i++) {
      List<Edge> firing = firing(random, ticks);
      made.add(firing);
      ticks = firing.get(firing.size() - 1).ticks() + QUIET + 1 + random.nextLong(2 * QUIET);
    }

    List<Sent> wire = new ArrayList<>();
    long[] lastOfChannel = new long[Channel.values().length];
    for (List<Edge> firing : made) {
      for (Edge edge : firing) {
        // Within a channel the wire keeps the order.
        long arrival =
            Math.max(
                lastOfChannel[edge.channel().code()],
                edge.ticks() + random.nextLong(BoardTraits.USUAL.lateTicks()));
        lastOfChannel[edge.channel().code()] = arrival;
        wire.add(new Sent(edge, arrival));
      }
    }
    knob(random, made, wire);
    wire.sort(Comparator.comparingLong(Sent::arrivalTicks));

    FiringGrouper grouper = new FiringGrouper(QUIET, BoardTraits.USUAL);
    List<Firing> found = new ArrayList<>();
    long sinceBeat = 0;
    for (Sent sent : wire) {
      if (random.nextInt(3) == 0 && sent.arrivalTicks() > sinceBeat) {
        found.addAll(grouper.advance(sent.arrivalTicks()));
        sinceBeat = sent.arrivalTicks();
      }
      found.addAll(grouper.add(sent.edge()));
    }
    found.addAll(grouper.finish());

    assertThat(found).as(name).hasSameSizeAs(made);
    for (int i = 0; i < made.size(); i++) {
      assertThat(found.get(i).edges()).as(name).containsExactlyInAnyOrderElementsOf(made.get(i));
      assertThat(found.get(i).edges()).as(name).extracting(Edge::ticks).isSorted();
      assertThat(found.get(i).damage()).as(name).isEmpty();
    }
  }

  /**
   * Some channels up and down again, all light down at the end, no gap of the quiet time in dark,
   * and no more of it after the light than belongs to a firing.
   */
  private static List<Edge> firing(Random random, long startTicks) {
    List<Edge> edges = new ArrayList<>();
    boolean[] high = new boolean[Channel.values().length];
    long ticks = startTicks;
    long lightTicks = Long.MAX_VALUE;
    int steps = 1 + random.nextInt(30);
    for (int i = 0; i < steps; i++) {
      Channel channel = Channel.ofCode(random.nextInt(Channel.KNOB.code())).orElseThrow();
      boolean afterLight = !isLight(high) && ticks - lightTicks > QUIET;
      if (afterLight && channel == Channel.RELEASE && !high[channel.code()]) {
        // A press so long after the light would begin the next firing.
        continue;
      }
      if (afterLight && ticks - lightTicks > (FiringGrouper.QUIETS_AFTER_LIGHT - 1) * QUIET) {
        break;
      }
      high[channel.code()] = !high[channel.code()];
      edges.add(new Edge(channel, high[channel.code()], ticks));
      lightTicks = channel.isLight() ? ticks : lightTicks;
      ticks += 1 + random.nextLong(isLight(high) ? 20 * QUIET : QUIET - 1);
    }
    for (Channel channel : Channel.values()) {
      if (high[channel.code()]) {
        edges.add(new Edge(channel, false, ticks));
        ticks += 1 + random.nextLong(1000);
      }
    }
    return edges;
  }

  /** The knob moves at any time, also while nothing else does: that changes no firing. */
  private static void knob(Random random, List<List<Edge>> made, List<Sent> wire) {
    List<Edge> last = made.get(made.size() - 1);
    long ticks = made.get(0).get(0).ticks();
    boolean high = false;
    while (ticks < last.get(last.size() - 1).ticks()) {
      ticks += 1 + random.nextLong(random.nextBoolean() ? QUIET : 10 * QUIET);
      high = !high;
      wire.add(new Sent(new Edge(Channel.KNOB, high, ticks), ticks));
    }
  }

  private static boolean isLight(boolean[] high) {
    return high[0] || high[1] || high[2] || high[3];
  }
}
