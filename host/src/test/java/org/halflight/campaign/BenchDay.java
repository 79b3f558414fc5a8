package org.halflight.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * A session at the bench with everything that a person and a rig do: firings, marks, mishaps.
 * Writes its lines one by one, as they would reach a session file.
 */
final class BenchDay {
  private final Random random;
  private final Consumer<String> file;
  private final LongSupplier numbers;
  private final BoardLines board;
  private final PersonMarks person;
  private final InventedShutter shutter;
  private final List<String> fired = new ArrayList<>();
  private final boolean calm;
  private long ticks = 4800;
  private long nextBeat = ticks + InventedSession.BEAT_TICKS;
  private int levels;
  private long offsetNanos;
  private UserActions acts = new UserActions();

  /** A session in which nothing is undone. */
  BenchDay(Random random, Consumer<String> file) {
    this(random, file, () -> 0);
  }

  /**
   * @param file takes each line, plain as {@link SessionLines} has it
   * @param numbers the number of the mark that was written last; 0 where marks have none
   */
  BenchDay(Random random, Consumer<String> file, LongSupplier numbers) {
    this.random = random;
    this.file = file;
    this.numbers = numbers;
    board = new BoardLines("R-" + (1000 + random.nextInt(9000)), 1 + random.nextInt(500));
    person = new PersonMarks(random, board.serial());
    shutter = new InventedShutter(random);
    calm = random.nextInt(3) == 0;
    fired.add(board.serial() + "/1/1");
  }

  /** The program begins, or begins again after it died. */
  void begins(boolean first) {
    file.accept(
        "M "
            + nanos()
            + " begins version=0.1.0 at=2026-11-25T10:00:00Z"
            + (first ? " session=day-" + board.serial() : ""));
    if (first) {
      received(board.greeting(ticks));
      mark(SessionLines.LIGHT);
      mark(person.run());
    } else {
      // The port opens, and many boards start anew with it.
      ticks += TrueEdge.ticks(3);
      nextBeat = ticks + InventedSession.BEAT_TICKS;
      levels = 0;
      if (random.nextBoolean()) {
        startsAnew();
      } else {
        received(board.greeting(ticks));
      }
    }
  }

  /** A session in which nothing but good firings happens. */
  void beginsToFire() {
    begins(true);
    mark(
        "run camera=many phase=adjusting dial=custom speeds=1/60,1/125 reference=exact"
            + " firings=9");
  }

  /** A good firing. */
  void firesOnce() {
    fires();
  }

  /** The next thing happens. */
  void goesOn() {
    switch (random.nextInt(calm ? 60 : 22)) {
      case 0, 1 -> mark(person.anything(fired));
      case 2 -> {
        mark(person.anything(fired));
        mark(person.anything(fired));
      }
      case 3 -> {
        mark("light-being-set is=begun");
        fires();
        if (random.nextInt(3) > 0) {
          mark("light-being-set is=ended");
        }
      }
      case 4 -> {
        mark("rig-at-work is=begun");
        if (random.nextBoolean()) {
          fires();
        }
        mark("rig-at-work is=ended");
      }
      case 5 -> {
        mark("link-lost");
        ticks += TrueEdge.ticks(0.5 + 3 * random.nextDouble());
        mark("link-back port=port-2");
        received(board.greeting(ticks));
        nextBeat = ticks + InventedSession.BEAT_TICKS;
      }
      case 6 -> startsAnew();
      case 7 -> received(board.counters(1 + random.nextInt(3)));
      case 8 -> received("E 00" + random.nextInt(10) + "# junk");
      case 9 -> mark("of-a-later-version some=thing");
      case 10 ->
          file.accept(
              "S " + nanos() + ' ' + Crc.sealed("p 0001 00" + Hex.of(2, random.nextInt(256))));
      case 11 -> passes(2 * random.nextDouble());
      case 12 -> mark("ends");
      case 13, 14 -> undoes();
      default -> fires();
    }
  }

  /** What is left of the file after a death. */
  void remembers(List<String> lines) {
    acts = UserActions.of(lines);
  }

  /** Mostly the last act, and back again; now and then one that cannot be undone. */
  private void undoes() {
    if (numbers.getAsLong() == 0) {
      return;
    }
    int which = random.nextInt(6);
    if (which == 0) {
      mark((random.nextBoolean() ? "undo of=" : "redo of=") + random.nextInt(1000));
    } else if (which < 3 && acts.redoable() > 0) {
      mark("redo of=" + acts.redoable());
    } else if (!acts.counting().isEmpty()) {
      List<Long> all = List.copyOf(acts.counting());
      mark("undo of=" + all.get(which == 3 ? random.nextInt(all.size()) : all.size() - 1));
    }
  }

  /** The person ends it in order. */
  void ends() {
    passes(1);
    mark("ends");
  }

  private void startsAnew() {
    ticks = 4800L + random.nextInt(1000);
    levels = 0;
    nextBeat = ticks + InventedSession.BEAT_TICKS;
    received(board.startsAnew(ticks));
  }

  private void fires() {
    TrueFiring firing =
        random.nextInt(4) == 0
            ? shutter.fires(ticks + 100, board.bootCount())
            : shutter.timed(ticks + 100, board.bootCount());
    fired.add(board.serial() + '/' + board.bootCount() + '/' + firing.firstTicks());
    for (TrueEdge edge : firing.edges()) {
      passTo(edge.ticks());
      int bit = 1 << edge.channel();
      levels = edge.high() ? levels | bit : levels & ~bit;
      received(board.edge(edge));
      if (random.nextInt(60) == 0) {
        mark(person.anything(fired));
      }
    }
    passes(0.05);
    received(board.counters());
    passes(0.3 + 0.6 * random.nextDouble());
  }

  private void passes(double seconds) {
    passTo(ticks + TrueEdge.ticks(seconds));
  }

  private void passTo(long to) {
    while (nextBeat <= to) {
      ticks = nextBeat;
      received(board.beat(nextBeat, levels, (levels & 1) == 0 ? 320 : 13_120));
      nextBeat += InventedSession.BEAT_TICKS;
    }
    ticks = to;
  }

  private void received(String line) {
    file.accept("R " + nanos() + ' ' + line);
  }

  private void mark(String words) {
    file.accept("M " + nanos() + ' ' + words);
    acts.note(numbers.getAsLong(), words);
  }

  /** Goes on over starts of the board. */
  private long nanos() {
    offsetNanos += 1_000_000;
    return offsetNanos + Math.round(ticks * 62.5);
  }
}
