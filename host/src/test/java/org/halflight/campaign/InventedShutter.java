package org.halflight.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * Fires invented leaf shutters whose hole grows evenly in area: the truth that results are held
 * against. The two levels are the Gauss nodes, where the mean of the times above them is the
 * effective time.
 */
final class InventedShutter {
  /** Share of full light at which the low and the high level stand. */
  private static final double LOW_SHARE = (1 - 1 / Math.sqrt(3)) / 2;

  private static final double HIGH_SHARE = (1 + 1 / Math.sqrt(3)) / 2;

  private final Random random;
  private final boolean releaseIsWired;
  private final boolean hasOuterSensors;
  private final boolean hears;

  InventedShutter(Random random) {
    this.random = random;
    releaseIsWired = random.nextBoolean();
    hasOuterSensors = random.nextInt(3) == 0;
    hears = random.nextInt(3) == 0;
  }

  /** Something that a session sees: mostly a good firing. */
  TrueFiring fires(long startTicks, long bootCount) {
    return switch (random.nextInt(24)) {
      case 0 -> firing(TrueFiring.Kind.DOUBLE, startTicks, bootCount);
      case 1 -> firing(TrueFiring.Kind.NEVER_FULLY_OPEN, startTicks, bootCount);
      case 2 ->
          releaseIsWired
              ? firing(TrueFiring.Kind.DID_NOT_OPEN, startTicks, bootCount)
              : timed(startTicks, bootCount);
      case 3 ->
          hears
              ? firing(TrueFiring.Kind.NOT_A_SHUTTER_EVENT, startTicks, bootCount)
              : timed(startTicks, bootCount);
      default -> timed(startTicks, bootCount);
    };
  }

  /** A good firing. */
  TrueFiring timed(long startTicks, long bootCount) {
    return firing(TrueFiring.Kind.TIMED, startTicks, bootCount);
  }

  private TrueFiring firing(TrueFiring.Kind kind, long startTicks, long bootCount) {
    List<TrueEdge> edges = new ArrayList<>();
    long at = startTicks;
    if (releaseIsWired && kind != TrueFiring.Kind.NOT_A_SHUTTER_EVENT) {
      edges.add(new TrueEdge(TrueEdge.RELEASE, true, at));
      at += TrueEdge.ticks(0.015 + 0.03 * random.nextDouble());
    }
    if (hears || kind == TrueFiring.Kind.NOT_A_SHUTTER_EVENT) {
      at = sounds(edges, at);
    }
    double effective = 0;
    switch (kind) {
      case TIMED -> {
        long[] widths = opens(edges, at, seconds());
        double ticks = (widths[0] + widths[1]) / 2.0;
        at = last(edges);
        if (random.nextInt(4) == 0) {
          ticks += bounces(edges, at, widths[1]) / 2.0;
        }
        effective = ticks / TrueEdge.TICKS_PER_SECOND;
      }
      case DOUBLE -> {
        double seconds = 0.004 + 0.05 * random.nextDouble();
        opens(edges, at, seconds);
        opens(edges, last(edges) + TrueEdge.ticks(0.01 + 0.08 * random.nextDouble()), seconds);
      }
      case NEVER_FULLY_OPEN -> {
        long width = TrueEdge.ticks(0.002 + 0.004 * random.nextDouble());
        long peak = random.nextBoolean() ? 0 : Math.round(width * 0.12);
        edges.add(new TrueEdge(TrueEdge.LOW, true, at));
        if (peak > 0) {
          edges.add(new TrueEdge(TrueEdge.HIGH, true, at + (width - peak) / 2));
          edges.add(new TrueEdge(TrueEdge.HIGH, false, at + (width + peak) / 2));
        }
        edges.add(new TrueEdge(TrueEdge.LOW, false, at + width));
      }
      case DID_NOT_OPEN, NOT_A_SHUTTER_EVENT -> {}
    }
    if (releaseIsWired && kind != TrueFiring.Kind.NOT_A_SHUTTER_EVENT) {
      edges.add(
          new TrueEdge(
              TrueEdge.RELEASE, false, last(edges) + TrueEdge.ticks(0.02 + 0.1 * share())));
    }
    return new TrueFiring(kind, bootCount, inOrder(edges), effective);
  }

  private double share() {
    return random.nextDouble();
  }

  /** From 1/500 to 1 s, the fast ones more often. */
  private double seconds() {
    return random.nextInt(12) == 0 ? 0.3 + 0.9 * share() : 0.002 * Math.pow(2, 6 * share());
  }

  /** Clicks of the mechanism; gives the ticks behind them. */
  private long sounds(List<TrueEdge> edges, long from) {
    long at = from;
    int clicks = 1 + random.nextInt(3);
    for (int i = 0; i < clicks; i++) {
      edges.add(new TrueEdge(TrueEdge.CLICK, true, at));
      at += TrueEdge.ticks(0.0005 + 0.001 * share());
      edges.add(new TrueEdge(TrueEdge.CLICK, false, at));
      at += TrueEdge.ticks(0.001 + 0.004 * share());
    }
    return at;
  }

  /** The edges of an opening; gives the widths at both levels, in ticks. */
  private long[] opens(List<TrueEdge> edges, long from, double effectiveSeconds) {
    double openingSeconds = Math.min(0.0004 + 0.002 * share(), effectiveSeconds * 0.6);
    double closingSeconds = Math.min(0.0004 + 0.002 * share(), effectiveSeconds * 0.6);
    double fullSeconds = effectiveSeconds - (openingSeconds + closingSeconds) / 2;
    double closes = openingSeconds + fullSeconds;
    long lowUp = from + TrueEdge.ticks(LOW_SHARE * openingSeconds);
    long highUp = from + TrueEdge.ticks(HIGH_SHARE * openingSeconds);
    long highDown = from + TrueEdge.ticks(closes + (1 - HIGH_SHARE) * closingSeconds);
    long lowDown = from + TrueEdge.ticks(closes + (1 - LOW_SHARE) * closingSeconds);
    edges.add(new TrueEdge(TrueEdge.LOW, true, lowUp));
    edges.add(new TrueEdge(TrueEdge.HIGH, true, highUp));
    edges.add(new TrueEdge(TrueEdge.HIGH, false, highDown));
    edges.add(new TrueEdge(TrueEdge.LOW, false, lowDown));
    if (hasOuterSensors) {
      for (int channel : new int[] {TrueEdge.OUTER_A, TrueEdge.OUTER_B}) {
        edges.add(new TrueEdge(channel, true, (lowUp + highUp) / 2 + random.nextInt(800)));
        edges.add(new TrueEdge(channel, false, (lowDown + highDown) / 2 + random.nextInt(800)));
      }
    }
    return new long[] {lowDown - lowUp, highDown - highUp};
  }

  /** A little light after closing, too early for a double; gives its width at the low level. */
  private long bounces(List<TrueEdge> edges, long from, long mainTicks) {
    long at = from + TrueEdge.ticks(0.0005 + 0.004 * share());
    long width = Math.min(TrueEdge.ticks(0.005), Math.round(mainTicks * 0.2 * share()) + 160);
    edges.add(new TrueEdge(TrueEdge.LOW, true, at));
    edges.add(new TrueEdge(TrueEdge.LOW, false, at + width));
    return width;
  }

  private static long last(List<TrueEdge> edges) {
    return edges.stream().mapToLong(TrueEdge::ticks).max().orElseThrow();
  }

  /** By ticks, no two at the same: order at one tick would be nobody's to say. */
  private static List<TrueEdge> inOrder(List<TrueEdge> edges) {
    List<TrueEdge> sorted = new ArrayList<>();
    Set<Long> taken = new HashSet<>();
    edges.stream()
        .sorted(Comparator.comparingLong(TrueEdge::ticks))
        .forEach(
            edge -> {
              long at = edge.ticks();
              while (!taken.add(at)) {
                at++;
              }
              sorted.add(new TrueEdge(edge.channel(), edge.high(), at));
            });
    sorted.sort(Comparator.comparingLong(TrueEdge::ticks));
    return sorted;
  }
}
