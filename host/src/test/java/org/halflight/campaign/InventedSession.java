package org.halflight.campaign;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;

/**
 * What a board sends while an invented shutter is fired: greetings, beats, counters and edges, with
 * the firing that each line is of.
 */
final class InventedSession {
  /** From beat to beat, in ticks. */
  static final long BEAT_TICKS = 1 << 22;

  /** Lines of different channels may come this far out of order. */
  private static final long DISORDER_TICKS = 320_000;

  private static final int NO_FIRING = -1;

  /**
   * A line of the board.
   *
   * @param nanos when the host has it
   * @param happened when it happened, by the host's clock
   * @param ticks when it happened, by the board's, not cut to the wire
   * @param firing the place of its firing in {@link #firings()}; -1 where it is of none
   */
  record Line(long nanos, long happened, long ticks, String text, int firing) {
    /** The same with other words. */
    Line with(String words) {
      return new Line(nanos, happened, ticks, words, firing);
    }
  }

  private final Random random;
  private final BoardLines board;
  private final List<TrueFiring> firings = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final long startTicks;
  private final double hostFast;
  private final BitSet spared = new BitSet();
  private final BitSet starts = new BitSet();

  /** When the ticks of this start were so many. */
  private long sinceTicks;

  private long sinceNanos;
  private long arrivedNanos;
  private long nextBeat;
  private int levels;

  private InventedSession(Random random) {
    this.random = random;
    board = new BoardLines("R-" + (1000 + random.nextInt(9000)), 1 + random.nextInt(500));
    startTicks = startTicks();
    sinceTicks = startTicks;
    hostFast = 1 + (random.nextDouble() - 0.5) * 1e-4;
    nextBeat = startTicks + BEAT_TICKS;
  }

  /** A session of so many firings at one start of the board. */
  static InventedSession of(Random random, int firings) {
    InventedSession session = new InventedSession(random);
    session.fire(firings, false);
    return session;
  }

  /** The same with a board that starts anew now and then. */
  static InventedSession withStarts(Random random, int firings) {
    InventedSession session = new InventedSession(random);
    session.fire(firings, true);
    return session;
  }

  /**
   * The greetings that answer a host, which asks until it has one: each start has one that comes
   * whole.
   */
  BitSet spared() {
    return spared;
  }

  /** The greetings with which the board starts anew. */
  BitSet starts() {
    return starts;
  }

  List<TrueFiring> firings() {
    return firings;
  }

  List<Line> lines() {
    return lines;
  }

  String serial() {
    return board.serial();
  }

  /** Just started, or running for so long that the half or the whole of its ticks wraps soon. */
  private long startTicks() {
    return switch (random.nextInt(4)) {
      case 0 -> (1L << 32) - TrueEdge.ticks(60 * random.nextDouble()) - BEAT_TICKS;
      case 1 -> (1L << 48) - TrueEdge.ticks(60 * random.nextDouble()) - BEAT_TICKS;
      case 2 -> random.nextLong() & 0xFFFF_FFFFFFL;
      default -> 4800 + random.nextInt(10_000);
    };
  }

  private void fire(int count, boolean starts) {
    InventedShutter shutter = new InventedShutter(random);
    spared.set(0);
    add(startTicks, board.greeting(startTicks), NO_FIRING);
    long at = startTicks + BEAT_TICKS + TrueEdge.ticks(0.1);
    for (int i = 0; i < count; i++) {
      TrueFiring firing = shutter.fires(at, board.bootCount());
      firings.add(firing);
      send(firing, i);
      beatsUpTo(firing.lastTicks());
      add(firing.lastTicks(), board.counters(), NO_FIRING);
      at = firing.lastTicks() + TrueEdge.ticks(0.3 + 0.9 * random.nextDouble());
      if (random.nextInt(30) == 0) {
        beatsUpTo(at - 1);
        add(at - 1, board.greeting(at - 1), NO_FIRING);
      } else if (starts && random.nextInt(25) == 0) {
        at = startsAnew(at);
      }
    }
    beatsUpTo(at + 4 * BEAT_TICKS);
  }

  /** The board starts anew; gives the ticks of what happens next. */
  private long startsAnew(long ticks) {
    beatsUpTo(ticks);
    sinceNanos = happened(ticks);
    long from = 4800L + random.nextInt(1000);
    sinceTicks = from;
    levels = 0;
    nextBeat = from + BEAT_TICKS;
    starts.set(lines.size());
    add(from, board.startsAnew(from), NO_FIRING);
    long answered = from + TrueEdge.ticks(0.05 + 0.2 * random.nextDouble());
    beatsUpTo(answered);
    spared.set(lines.size());
    add(answered, board.greeting(answered), NO_FIRING);
    return answered + TrueEdge.ticks(0.3 + 0.5 * random.nextDouble());
  }

  private long happened(long ticks) {
    return sinceNanos + Math.round((ticks - sinceTicks) * 62.5 * hostFast);
  }

  private void send(TrueFiring firing, int place) {
    List<TrueEdge> waiting = new ArrayList<>();
    for (TrueEdge edge : firing.edges()) {
      if (edge.ticks() > nextBeat) {
        flush(waiting, place);
        beatsUpTo(edge.ticks());
      }
      waiting.add(edge);
    }
    flush(waiting, place);
  }

  /** Neighbours of different channels may change places. */
  private void flush(List<TrueEdge> waiting, int place) {
    for (int i = 1; i < waiting.size(); i++) {
      TrueEdge one = waiting.get(i - 1);
      TrueEdge two = waiting.get(i);
      boolean may =
          one.channel() != two.channel() && Math.abs(two.ticks() - one.ticks()) < DISORDER_TICKS;
      if (may && random.nextInt(5) == 0) {
        waiting.set(i - 1, two);
        waiting.set(i, one);
      }
    }
    for (TrueEdge edge : waiting) {
      int bit = 1 << edge.channel();
      levels = edge.high() ? levels | bit : levels & ~bit;
      add(edge.ticks(), board.edge(edge), place);
    }
    waiting.clear();
  }

  private void beatsUpTo(long ticks) {
    while (nextBeat <= ticks) {
      int light = (levels & 1) == 0 ? 16 * 20 : 16 * 820;
      add(nextBeat, board.beat(nextBeat, levels, light), NO_FIRING);
      nextBeat += BEAT_TICKS;
    }
  }

  /** A line arrives when it and all before it have gone over the wire, and the host has time. */
  private void add(long ticks, String text, int firing) {
    long happened = happened(ticks);
    long stall = random.nextInt(50) == 0 ? random.nextInt(30_000_000) : random.nextInt(1_000_000);
    arrivedNanos = Math.max(arrivedNanos, happened + 300_000) + 40_000L * text.length();
    lines.add(new Line(arrivedNanos + stall, happened, ticks, text, firing));
    arrivedNanos += stall;
  }
}
