package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.EventLine;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.desk.WindowStart;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.FiringResult;

/**
 * Clocks of the host that jump back, stand still or run far ahead, in the course of a session, in
 * its dates and between the starts of the program.
 */
final class ClocksPart implements Part {
  static final String OTHER = "troubles of a session whose clock jumps";
  static final String GONE = "firings that did not come into the record";
  static final String DIFFER = "sessions whose file does not say what the bench said";
  static final String HIDDEN = "interrupted runs that the window did not find";

  private static final List<String> DATES =
      List.of(
          "2026-11-25T10:00:00Z",
          "1900-01-01T00:00:00Z",
          "2099-12-31T23:59:59+14:00",
          "+999999999-12-31T23:59:59Z",
          "-999999999-01-01T00:00:00Z",
          "1970-01-01T00:00Z",
          "2026-02-31T10:00:00Z",
          "yesterday",
          "");

  private static final long[] JUMPS = {
    -1, -1_000_000_000, -3_600_000_000_000L, 3_600_000_000_000L, 1L << 60, -(1L << 60), 0
  };

  @Override
  public String name() {
    return "clock";
  }

  @Override
  public String unit() {
    return "sessions with odd clocks";
  }

  @Override
  public long shortSize() {
    return 15;
  }

  @Override
  public long longSize() {
    return 2_000;
  }

  @Override
  public Tally run(long seed, long size) throws IOException {
    Tally tally = tally();
    for (long i = 0; i < size; i++) {
      one(Seeds.of(seed, i), tally);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws IOException {
    Tally tally = tally();
    one(caseSeed, tally);
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    for (String law : List.of(OTHER, GONE, DIFFER, HIDDEN)) {
      tally.law(law);
    }
    return tally;
  }

  private void one(long caseSeed, Tally tally) throws IOException {
    Random random = new Random(caseSeed);
    String replay = Seeds.replay(name(), caseSeed);
    Path folder = Files.createTempDirectory("campaign-clock");
    tally.add(unit(), 1);
    try {
      Path sessions = Files.createDirectories(folder.resolve(WindowStart.SESSIONS));
      Path file = sessions.resolve("2026-11-25-100000-000.session");
      work(random, file, replay, tally);
      importSession(random, folder, file, replay, tally);
      Path odd = sessions.resolve("2099-01-01-000000-000.session");
      Files.write(odd, ended(random));
      Optional<Path> found = WindowStart.goesOnWith(folder);
      List<String> lines = Files.readAllLines(file);
      boolean interrupted = Folded.of(lines).isInterrupted() && !isEnded(lines);
      if (interrupted && !found.equals(Optional.of(file))) {
        tally.breaks(HIDDEN, replay, found.toString());
      }
    } catch (RuntimeException e) {
      tally.breaks(OTHER, replay, Thrown.said(e));
    } finally {
      Folders.delete(folder);
    }
  }

  private static boolean isEnded(List<String> lines) {
    boolean ended = false;
    for (String line : lines) {
      ended =
          line.matches("M \\d+ -?\\d+ ends .*") || (ended && !line.matches("M .* (begins|run) .*"));
    }
    return ended;
  }

  /** The clock of the bench jumps, also over a restart of the program. */
  private static void work(Random random, Path file, String replay, Tally tally)
      throws IOException {
    AtomicLong nanos = new AtomicLong(random.nextBoolean() ? 0 : random.nextLong());
    Workbench bench =
        Workbench.begin(
            SessionFile.create(file),
            nanos::get,
            Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.of("odd")));
    String at = DATES.get(random.nextInt(DATES.size()));
    for (int life = 0; life < 2; life++) {
      AtomicLong jumped = new AtomicLong();
      Workbench here = bench;
      BenchDay day =
          new BenchDay(
              random,
              line -> {
                if (random.nextInt(20) == 0) {
                  jumped.set(JUMPS[random.nextInt(JUMPS.length)]);
                }
                here.onEvent(EventLine.parse(moved(line, jumped.get(), at)).orElseThrow());
              });
      day.begins(true);
      for (int i = 0; i < 8; i++) {
        day.goesOn();
      }
      Folded live = Folded.of(bench.fold());
      live.breaksOff();
      bench.close();
      String difference = live.difference(Folded.of(Files.readAllLines(file)));
      if (!difference.isEmpty()) {
        tally.breaks(DIFFER, replay, difference);
      }
      if (life == 0) {
        nanos.set(random.nextLong());
        bench =
            Workbench.resume(
                SessionFile.resume(file),
                nanos::get,
                SessionFile.read(file).events(),
                Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.empty()));
      }
    }
  }

  private static String moved(String line, long by, String at) {
    String[] words = line.split(" ", 3);
    String rest =
        words[2].startsWith("begins ")
            ? words[2].replaceFirst("at=\\S*", "at=" + SessionLines.value(at))
            : words[2];
    return words[0] + ' ' + (Long.parseLong(words[1]) + by) + ' ' + rest;
  }

  private static void importSession(
      Random random, Path folder, Path file, String replay, Tally tally) throws IOException {
    for (Instant now : List.of(Instant.parse("2026-11-25T10:00:00Z"), Instant.EPOCH)) {
      Clock clock =
          Clock.fixed(random.nextBoolean() ? now : now.minusSeconds(1L << 32), ZoneOffset.UTC);
      try (WorkshopRecord record = WorkshopRecord.open(folder.resolve("record.sqlite"), clock)) {
        record.importSession(file);
        for (FiringResult each : Folded.of(Files.readAllLines(file)).fold().session().results()) {
          tally.add("firings", 1);
          if (record.firing(each.key()).isEmpty()) {
            tally.breaks(GONE, replay, each.key().toString());
          }
        }
      }
    }
  }

  private static List<String> ended(Random random) {
    SessionLines lines = new SessionLines();
    BenchDay day = new BenchDay(random, lines::add);
    day.begins(true);
    day.ends();
    return lines.lines();
  }
}
