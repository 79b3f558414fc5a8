package org.halflight.campaign;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;

/** The files that are to be damaged, whole. */
final class Originals {
  private static final String[] ORDER = {"1/30", "1/60", "1/125"};

  private Originals() {}

  /** A session of a run as found, some work and a run as left, with marks of all kinds. */
  static String session() {
    return session(SessionLines.SECOND);
  }

  /** The same in the form that this first line says. */
  static String session(String heading) {
    Random random = new Random(7);
    SessionLines lines = new SessionLines(List.of(heading));
    Bench bench = new Bench(random, lines);
    bench.mark("begins version=0.1.0 at=2026-11-25T10:00:00Z session=campaign-original");
    bench.greets();
    bench.mark(
        "profile is=in-use on=2026-11-26 most-days=90 text=" + SessionLines.value(profile()));
    bench.mark(SessionLines.LIGHT);
    for (String phase : new String[] {"as-found", "as-left"}) {
      bench.mark(
          "run camera=invented%20one phase="
              + phase
              + " dial=custom speeds=1/30,1/60,1/125 reference=exact firings=3 rest-seconds=86400.0"
              + " with.place="
              + SessionLines.value("behind the lens"));
      for (String speed : ORDER) {
        bench.mark("speed is=" + speed);
        for (int i = 0; i < 4; i++) {
          bench.fires(speed);
        }
      }
      bench.mark("reject because=" + SessionLines.value("thumb slipped"));
      bench.fires("1/125");
      bench.mark("move firings=" + bench.last() + " to=1/60");
      bench.mark(
          "light-read of=lamp-covered counts=20.500000 uncertainty=0.250000 blocks=32 ticks=4000000");
      bench.mark(
          "light-read of=shut-cocked counts=21.500000 uncertainty=0.250000 blocks=32 ticks=5000000");
    }
    bench.mark("ends");
    return lines.text();
  }

  /** A rig profile. */
  static String profile() {
    String text =
        """
        halflight rig profile 1
        rig = R-4711
        kind = full
        firmware = 1.0.0
        date = 2026-11-24
        light-counts = 20.0 800.0 840.0
        threshold-counts = 189.06 650.94
        clock-fast-ppm = 12.5 3.0 20.0 generator
        trip-counts.low = 0.5 0.5 0.2
        trip-counts.high = 0.5 0.5 0.2
        """;
    CRC32 sum = new CRC32();
    text.chars()
        .forEach(
            c -> {
              sum.update(c >> 8);
              sum.update(c & 0xFF);
            });
    return text + "check-sum = " + Hex.of(8, sum.getValue()) + '\n';
  }

  /** A table for a gauge study. */
  static String gauge() {
    Random random = new Random(9);
    StringBuilder table = new StringBuilder("part,operator,value\r\n");
    for (int part = 1; part <= 4; part++) {
      for (String operator : List.of("A", "B")) {
        for (int trial = 0; trial < 3; trial++) {
          table.append(part).append(',').append(operator).append(',');
          table.append(
              String.format(java.util.Locale.ROOT, "%.3f", part + 0.1 * random.nextGaussian()));
          table.append("\r\n");
        }
      }
    }
    return table.toString();
  }

  static Path write(Path file, String text) throws IOException {
    return Files.writeString(file, text, StandardCharsets.ISO_8859_1);
  }

  /** A bench at which nothing goes wrong. */
  private static final class Bench {
    private final Random random;
    private final SessionLines lines;
    private final BoardLines board = new BoardLines("R-4711", 12);
    private long ticks = 4800;
    private long nextBeat = ticks + InventedSession.BEAT_TICKS;
    private int levels;
    private String last = "";

    Bench(Random random, SessionLines lines) {
      this.random = random;
      this.lines = lines;
    }

    String last() {
      return last;
    }

    void greets() {
      received(board.greeting(ticks));
    }

    void mark(String words) {
      lines.add("M " + nanos() + ' ' + words);
    }

    void fires(String speed) {
      double marked = 1 / Double.parseDouble(speed.substring(2));
      double seconds = marked * (1 + 0.02 * random.nextGaussian());
      last = board.serial() + '/' + board.bootCount() + '/' + (ticks + 1000);
      double ramp = 0.001;
      edge(TrueEdge.RELEASE, true, 0);
      edge(TrueEdge.LOW, true, 0.02);
      edge(TrueEdge.HIGH, true, 0.57735 * ramp);
      edge(TrueEdge.HIGH, false, seconds - 0.57735 * ramp);
      edge(TrueEdge.LOW, false, 0.57735 * ramp);
      edge(TrueEdge.RELEASE, false, 0.05);
      passTo(ticks + TrueEdge.ticks(0.3));
      received(board.counters());
      passTo(ticks + TrueEdge.ticks(0.3));
    }

    private void edge(int channel, boolean high, double afterSeconds) {
      passTo(ticks + TrueEdge.ticks(afterSeconds) + 1000);
      levels = high ? levels | 1 << channel : levels & ~(1 << channel);
      received(board.edge(new TrueEdge(channel, high, ticks)));
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
      lines.add("R " + nanos() + ' ' + line);
    }

    private long nanos() {
      return Math.round((ticks - 4800) * 62.5) + 1_000_000;
    }
  }
}
