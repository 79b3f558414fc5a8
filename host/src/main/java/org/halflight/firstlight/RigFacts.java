package org.halflight.firstlight;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;

/** What a rig has said since a step began: its light, its levels, and how they go together. */
final class RigFacts {
  /** Readings on one side of a level, by which it is judged. Our own limit. */
  static final int READINGS_LEAST = 4;

  /** A level is judged only by light that is so far from it, 0.3 V. Our own limit. */
  static final double MARGIN_COUNTS = 60;

  /** Light that moves by as much was covered or uncovered: 1 V. Our own limit. */
  private static final double SWUNG_COUNTS = 200;

  /** One wrong reading in so many may be a line that came late: edges go before light. */
  private static final int RIGHT_OF_WRONG = 4;

  /** Edges so close together are one thing that happened. Our own limit. */
  private static final double TOGETHER_SECONDS = 0.010;

  /** Levels that come closer together say nothing of their order. Our own limit. */
  private static final double ORDER_SECONDS = 100e-6;

  /** No hand takes longer from one level to the other. Our own limit. */
  private static final double RISE_SECONDS = 0.5;

  /** The readings of a sensor, as counts. */
  static final class Range {
    private double least = Double.MAX_VALUE;
    private double most = -1;
    private double last = -1;

    double least() {
      return least;
    }

    double most() {
      return most;
    }

    double swing() {
      return most < 0 ? 0 : most - least;
    }

    boolean isRead() {
      return most >= 0;
    }
  }

  /** How often a level was on and off while the light of a sensor was above it and below. */
  static final class Pair {
    private int litOn;
    private int litOff;
    private int darkOn;
    private int darkOff;

    private void add(boolean lit, boolean on) {
      if (lit) {
        litOn += on ? 1 : 0;
        litOff += on ? 0 : 1;
      } else {
        darkOn += on ? 1 : 0;
        darkOff += on ? 0 : 1;
      }
    }

    private static boolean mostly(int right, int wrong) {
      return right >= READINGS_LEAST && right >= RIGHT_OF_WRONG * wrong;
    }

    boolean follows() {
      return mostly(litOn, litOff) && mostly(darkOff, darkOn);
    }

    boolean isInverted() {
      return mostly(litOff, litOn) && mostly(darkOn, darkOff);
    }

    boolean isAlwaysOn() {
      return mostly(litOn, litOff) && mostly(darkOn, darkOff);
    }

    boolean isNeverOn() {
      return mostly(litOff, litOn) && mostly(darkOff, darkOn);
    }
  }

  private final BoardTraits board;
  private final Set<Channel> on = EnumSet.noneOf(Channel.class);
  private final Set<Channel> onAtFirst = EnumSet.noneOf(Channel.class);
  private final Map<Channel, Integer> rises = new EnumMap<>(Channel.class);
  private final Map<Channel, Integer> falls = new EnumMap<>(Channel.class);
  private final Map<Channel, Edge> lastEdge = new EnumMap<>(Channel.class);
  private final Map<Channel, Map<Channel, Integer>> together = new EnumMap<>(Channel.class);
  private final Map<Channel, Range> ranges = new EnumMap<>(Channel.class);
  private final Map<Channel, Map<Channel, Pair>> pairs = new EnumMap<>(Channel.class);
  private boolean levelsKnown;
  private int lowFirst;
  private int highFirst;

  RigFacts(BoardTraits board) {
    this.board = board;
  }

  void onEvent(RigEvent event) {
    if (event instanceof RigEvent.EdgeAt at) {
      edge(at.edge());
    } else if (event instanceof RigEvent.TimeAt beat) {
      levels(beat.levels());
    } else if (event instanceof RigMessage.LightBlock block) {
      light(block.channel(), block.sum16() / 16.0);
    }
  }

  private void levels(int mask) {
    for (Channel each : Channel.values()) {
      boolean high = (mask & 1 << each.code()) != 0;
      if (!lastEdge.containsKey(each)) {
        set(each, high);
      }
      if (high && !levelsKnown) {
        onAtFirst.add(each);
      }
    }
    levelsKnown = true;
  }

  private void edge(Edge edge) {
    Channel its = edge.channel();
    set(its, edge.high());
    (edge.high() ? rises : falls).merge(its, 1, Integer::sum);
    lastEdge.forEach(
        (other, before) -> {
          double apart = board.rate().seconds(Math.abs(edge.ticks() - before.ticks()));
          if (other != its && apart < TOGETHER_SECONDS) {
            together
                .computeIfAbsent(its, none -> new EnumMap<>(Channel.class))
                .merge(other, 1, Integer::sum);
          }
          if (other != its && apart < RISE_SECONDS && edge.high() && before.high()) {
            order(edge, before);
          }
        });
    lastEdge.put(its, edge);
  }

  /** Which of the two levels of the centre came first when it became light. */
  private void order(Edge one, Edge other) {
    Edge low = one.channel() == Channel.CENTRE_LOW ? one : other;
    Edge high = one.channel() == Channel.CENTRE_LOW ? other : one;
    if (low.channel() == Channel.CENTRE_LOW && high.channel() == Channel.CENTRE_HIGH) {
      double seconds = board.rate().seconds(high.ticks() - low.ticks());
      lowFirst += seconds > ORDER_SECONDS ? 1 : 0;
      highFirst += seconds < -ORDER_SECONDS ? 1 : 0;
    }
  }

  private void set(Channel channel, boolean high) {
    if (high) {
      on.add(channel);
    } else {
      on.remove(channel);
    }
  }

  private void light(Channel sensor, double counts) {
    Range range = ranges.computeIfAbsent(sensor, none -> new Range());
    if (levelsKnown && range.isRead()) {
      for (Channel level : Channel.values()) {
        if (level.isLight()) {
          compare(level, sensor, range.last, counts);
        }
      }
    }
    range.last = counts;
    range.least = Math.min(range.least, counts);
    range.most = Math.max(range.most, counts);
  }

  /** Two readings in a row on the same side of a level: it has had the time to follow. */
  private void compare(Channel level, Channel sensor, double before, double counts) {
    double at = Levels.counts(board, level);
    boolean lit = Math.min(before, counts) > at + MARGIN_COUNTS;
    boolean dark = Math.max(before, counts) < at - MARGIN_COUNTS;
    if (lit || dark) {
      pairs
          .computeIfAbsent(level, none -> new EnumMap<>(Channel.class))
          .computeIfAbsent(sensor, none -> new Pair())
          .add(lit, on.contains(level));
    }
  }

  /** The light of a sensor; the centre goes by its low channel. */
  Range range(Channel sensor) {
    return ranges.getOrDefault(sensor, new Range());
  }

  /** How a level goes with the light of a sensor. */
  Pair pair(Channel level, Channel sensor) {
    return Optional.ofNullable(pairs.get(level)).map(its -> its.get(sensor)).orElseGet(Pair::new);
  }

  int rises(Channel channel) {
    return rises.getOrDefault(channel, 0);
  }

  int falls(Channel channel) {
    return falls.getOrDefault(channel, 0);
  }

  int changes(Channel channel) {
    return rises(channel) + falls(channel);
  }

  boolean isOn(Channel channel) {
    return on.contains(channel);
  }

  /** Whether it was on when the step began. */
  boolean wasOn(Channel channel) {
    return onAtFirst.contains(channel);
  }

  /** How many edges of an input had one of the other beside them. */
  int together(Channel one, Channel other) {
    return count(one, other) + count(other, one);
  }

  private int count(Channel one, Channel other) {
    return Optional.ofNullable(together.get(one)).map(its -> its.getOrDefault(other, 0)).orElse(0);
  }

  /** Whether the high level came before the low one each time that it became light. */
  boolean isHighFirst() {
    return highFirst >= 2 && lowFirst == 0;
  }

  /** Whether the light of a sensor went and came. */
  boolean swung(Channel sensor) {
    return range(sensor).swing() > SWUNG_COUNTS;
  }

  /** Whether the light of an outer sensor is above its level now. */
  boolean isLit(Channel sensor) {
    return range(sensor).last > Levels.counts(board, sensor) + MARGIN_COUNTS;
  }

  /** The same rig from now on, as if nothing had happened before. */
  RigFacts fromNow() {
    RigFacts later = new RigFacts(board);
    later.levelsKnown = levelsKnown;
    later.on.addAll(on);
    later.onAtFirst.addAll(on);
    later.lastEdge.putAll(lastEdge);
    return later;
  }
}
