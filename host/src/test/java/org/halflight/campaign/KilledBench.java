package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.EventLine;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.bench.Workbench;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.record.SessionStart;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.FiringResult;
import org.halflight.session.SessionEvent;
import org.halflight.trouble.Trouble;

/**
 * A bench that works until it is killed: every line goes to the session file, every firing that
 * settles to the record. Says each firing that is kept.
 *
 * <p>Words: folder, number of the session, start of the board, seed, and where to stand still
 * ({@code never}, {@code LINE}, or a point of a write of the record) at its how manyth time.
 */
public final class KilledBench {
  private final String stand;
  private int standCount;
  private final Path sessionFile;
  private final WorkshopRecord record;
  private final AtomicLong nanos = new AtomicLong();
  private Workbench bench;
  private SessionStart start;
  private long shots;

  private KilledBench(Path folder, String session, String stand, int standCount) {
    this.stand = stand;
    this.standCount = standCount;
    sessionFile = folder.resolve(session + ".session");
    record =
        WorkshopRecord.open(
            folder.resolve("record.sqlite"), RecordDump.CLOCK, point -> stand(point.name()));
  }

  public static void main(String[] words) {
    KilledBench bench =
        new KilledBench(Path.of(words[0]), words[1], words[4], Integer.parseInt(words[5]));
    try {
      bench.work(Long.parseLong(words[2]), new Random(Long.parseLong(words[3])));
    } catch (Trouble trouble) {
      say("TROUBLE " + trouble.getMessage());
    } catch (RuntimeException e) {
      say("THROWN " + Thrown.said(e));
    }
  }

  private void work(long bootCount, Random random) {
    BoardLines board = new BoardLines("R-0815", bootCount);
    boolean first = !Files.exists(sessionFile);
    open();
    long at = 4800;
    received(board.greeting(at), at);
    mark(SessionLines.LIGHT);
    if (bench.fold().session().run() == 0) {
      mark(
          "run camera=killed phase=adjusting dial=custom speeds=1/60,1/125 reference=exact"
              + " firings=1000");
    }
    say(first ? "BEGAN" : "WENT-ON");
    InventedShutter shutter = new InventedShutter(random);
    while (true) {
      long beat = at + InventedSession.BEAT_TICKS;
      received(board.beat(beat, 0, 320), beat);
      TrueFiring firing = shutter.timed(beat + 1000, bootCount);
      int levels = 0;
      long due = beat + InventedSession.BEAT_TICKS;
      for (TrueEdge edge : firing.edges()) {
        while (due < edge.ticks()) {
          received(board.beat(due, levels, (levels & 1) == 0 ? 320 : 13_120), due);
          due += InventedSession.BEAT_TICKS;
        }
        levels = edge.high() ? levels | 1 << edge.channel() : levels & ~(1 << edge.channel());
        received(board.edge(edge), edge.ticks());
      }
      if (++shots % 5 == 0) {
        mark("reject because=invented");
      }
      for (int i = 0; i < 2; i++) {
        received(board.beat(due, 0, 320), due);
        at = due;
        due += InventedSession.BEAT_TICKS;
      }
    }
  }

  private void open() {
    OffsetDateTime at = Instant.EPOCH.atOffset(ZoneOffset.UTC);
    if (Files.exists(sessionFile)) {
      SessionFile file = SessionFile.resume(sessionFile);
      Optional<String> name =
          file.before().isEmpty() ? Optional.of(sessionFile.toString()) : Optional.empty();
      bench = Workbench.resume(file, nanos::get, file.before(), Marks.begins("test", at, name));
      begins(SessionFile.first(sessionFile).orElseThrow());
      record.importSession(sessionFile);
    } else {
      bench =
          Workbench.begin(
              SessionFile.create(sessionFile),
              nanos::get,
              Marks.begins("test", at, Optional.of(sessionFile.toString())));
      begins(SessionFile.first(sessionFile).orElseThrow());
    }
  }

  private void begins(BenchEvent first) {
    start = SessionStart.of(first, String.valueOf(sessionFile.getFileName()));
    record.begin(start);
  }

  private void received(String line, long ticks) {
    nanos.set(Math.max(nanos.get(), Math.round(ticks * 62.5)));
    happens("R " + bench.now() + ' ' + line);
  }

  private void mark(String words) {
    happens("M " + bench.now() + ' ' + words);
  }

  /** What does not reach a full disk is said, and the bench goes on. */
  private void happens(String line) {
    try {
      keeps(line);
    } catch (Trouble trouble) {
      say("TROUBLE " + trouble.getMessage());
    }
  }

  private void keeps(String line) {
    SessionReducer.Brought brought = bench.onEvent(EventLine.parse(line).orElseThrow());
    stand("LINE");
    say("LINE");
    int run = bench.fold().session().run();
    if (run > 0 && record.run(start.key(), run).isEmpty()) {
      record.keep(
          new Run(
              Id.ofNew(),
              Optional.empty(),
              start.key(),
              run,
              bench.fold().session().setup().orElseThrow(),
              Optional.empty()));
    }
    for (SessionEvent each : brought.news()) {
      if (each instanceof SessionEvent.Settled settled) {
        keeps("SETTLED", settled.result());
      } else if (each instanceof SessionEvent.Rejected rejected) {
        keeps("REJECTED", rejected.result());
      }
    }
  }

  private void keeps(String word, FiringResult result) {
    record.settle(start.key(), result);
    say(word + " " + result.key().bootCount() + " " + result.key().firstTicks());
  }

  /** Waits here for ever when this is the place to be killed at. */
  private void stand(String place) {
    if (place.equals(stand) && --standCount == 0) {
      say("STANDS");
      try {
        while (System.in.read() >= 0) {
          // Nobody writes: the parent kills.
        }
      } catch (IOException gone) {
        Runtime.getRuntime().halt(1);
      }
    }
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }
}
