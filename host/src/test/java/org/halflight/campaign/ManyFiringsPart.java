package org.halflight.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Very many firings in one session, very many edges in one firing, very many heads of light curves:
 * what one more costs must not grow. Counted in bytes asked for, which no clock disturbs; the times
 * are told beside them.
 */
final class ManyFiringsPart implements Part {
  static final String GROWS = "costs that grow with what came before (last tenth over first, in %)";
  static final String HEAP =
      "memory kept that grows by more with each firing (last over first, in %)";
  static final String HEADS = "bytes that heads of curves without values take, each";

  /** Half as much again: a list that doubles its room is no growth. */
  private static final long MOST_PERCENT = 150;

  private static final int HEAD_COUNT = 300;
  private static final long BYTES_A_HEAD = 50_000;
  private static final int TENTHS = 10;

  @Override
  public String name() {
    return "many";
  }

  @Override
  public String unit() {
    return "firings in one session";
  }

  @Override
  public long shortSize() {
    return 600;
  }

  @Override
  public long longSize() {
    return 100_000;
  }

  @Override
  public Tally run(long seed, long size) {
    Tally tally = new Tally(name());
    tally.law(GROWS);
    tally.law(HEAP);
    tally.law(HEADS);
    String replay = "--seed " + seed + " --parts " + name() + " --size " + name() + "=" + size;
    firings(new Random(seed), (int) size, replay, tally);
    edges((int) size * 2, replay, tally);
    heads(replay, tally);
    return tally;
  }

  @Override
  public Tally again(long caseSeed) {
    return run(caseSeed, longSize());
  }

  private static void firings(Random random, int count, String replay, Tally tally) {
    Folded folded = Folded.live(SessionLines.FIRST);
    List<String> waiting = new ArrayList<>();
    BenchDay day = new BenchDay(random, waiting::add);
    day.beginsToFire();
    Tenths tenths = new Tenths();
    for (int tenth = 0; tenth < TENTHS; tenth++) {
      waiting.forEach(folded::handle);
      tenths.begin();
      for (int i = 0; i < count / TENTHS; i++) {
        waiting.clear();
        day.firesOnce();
        tenths.resume();
        waiting.forEach(folded::handle);
        tenths.pause();
      }
      waiting.clear();
      tenths.end(count / TENTHS);
    }
    tally.add("firings in one session", folded.seen().size());
    tenths.report("a firing", replay, tally);
  }

  /** A contact that chatters while the shutter is open: all one firing. */
  private static void edges(int count, String replay, Tally tally) {
    BoardLines board = new BoardLines("R-1", 1);
    Folded folded = Folded.live(SessionLines.FIRST);
    long ticks = 4800;
    folded.handle("R 0 " + board.greeting(ticks));
    folded.handle("M 0 " + SessionLines.LIGHT);
    folded.handle("R 0 " + board.edge(new TrueEdge(TrueEdge.LOW, true, ticks += 1000)));
    Tenths tenths = new Tenths();
    for (int tenth = 0; tenth < TENTHS; tenth++) {
      tenths.begin();
      for (int i = 0; i < count / TENTHS; i++) {
        ticks += 40_000;
        TrueEdge edge = new TrueEdge(TrueEdge.CONTACT, i % 2 == 0, ticks);
        String line = "R 0 " + board.edge(edge);
        String beat = i % 100 == 99 ? "R 0 " + board.beat(ticks + 1, 1, 13_120) : "";
        tenths.resume();
        folded.handle(line);
        if (!beat.isEmpty()) {
          folded.handle(beat);
        }
        tenths.pause();
      }
      tenths.end(count / TENTHS);
    }
    tally.add("edges in one firing", count);
    tenths.report("an edge of one firing", replay, tally);
  }

  private static void heads(String replay, Tally tally) {
    Folded folded = Folded.live(SessionLines.FIRST);
    BoardLines board = new BoardLines("R-1", 1);
    folded.handle("R 0 " + board.greeting(4800));
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < HEAD_COUNT; i++) {
      lines.add("R 0 " + board.head(0, i == 0 ? 0 : 1, 5000L + 300L * i, 256, 0xFFFF));
    }
    // The first head of the next curve makes an end of this one.
    lines.add("R 0 " + board.head(1, 0, 9_000_000L, 256, 1));
    long before = Allocated.bytes();
    lines.forEach(folded::handle);
    folded.breaksOff();
    long each = (Allocated.bytes() - before) / HEAD_COUNT;
    tally.most("bytes taken by a head of a curve without values", each);
    if (each > BYTES_A_HEAD) {
      tally.breaks(HEADS, replay, each + " bytes");
    }
  }

  /** Costs by tenths of the way. */
  static final class Tenths {
    private final List<Long> bytesEach = new ArrayList<>();
    private final List<Long> nanosEach = new ArrayList<>();
    private final List<Long> keptEach = new ArrayList<>();
    private long bytes;
    private long nanos;
    private long fromBytes;
    private long fromNanos;
    private long kept;

    void begin() {
      bytes = 0;
      nanos = 0;
      kept = Allocated.kept();
    }

    void resume() {
      fromBytes = Allocated.bytes();
      fromNanos = System.nanoTime();
    }

    void pause() {
      nanos += System.nanoTime() - fromNanos;
      bytes += Allocated.bytes() - fromBytes;
    }

    void end(int count) {
      bytesEach.add(bytes / count);
      nanosEach.add(nanos / count);
      keptEach.add((Allocated.kept() - kept) / count);
    }

    void report(String of, String replay, Tally tally) {
      // The first tenth loads classes and warms up; the second is what is held against.
      tally.add("bytes taken by " + of + ", second tenth", bytesEach.get(1));
      tally.add("bytes taken by " + of + ", last tenth", bytesEach.get(TENTHS - 1));
      tally.add("nanoseconds for " + of + ", second tenth", nanosEach.get(1));
      tally.add("nanoseconds for " + of + ", last tenth", nanosEach.get(TENTHS - 1));
      tally.add("bytes kept of " + of + ", second tenth", keptEach.get(1));
      tally.add("bytes kept of " + of + ", last tenth", keptEach.get(TENTHS - 1));
      holds(GROWS, of, bytesEach, replay, tally);
      holds(HEAP, of, keptEach, replay, tally);
    }

    static void holds(String law, String of, List<Long> each, String replay, Tally tally) {
      long percent = 100 * each.get(TENTHS - 1) / Math.max(100, each.get(1));
      if (percent > MOST_PERCENT) {
        tally.breaks(law, replay, of + ": " + percent + " %, by tenths " + each);
      }
    }
  }
}
