package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.halflight.desk.WindowStart;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.FiringResult;

/**
 * The record is lost, or an older one is put in its place: at the next start of the window all
 * sessions are in it again.
 */
final class RestoresPart implements Part {
  static final String GONE = "firings of sessions that did not come back";
  static final String TROUBLE = "starts at which something was wrong";

  @Override
  public String name() {
    return "restore";
  }

  @Override
  public String unit() {
    return "restores and losses of a record";
  }

  @Override
  public long shortSize() {
    return 4;
  }

  @Override
  public long longSize() {
    return 300;
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
    tally.law(GONE);
    tally.law(TROUBLE);
    return tally;
  }

  private void one(long caseSeed, Tally tally) throws IOException {
    Random random = new Random(caseSeed);
    String replay = Seeds.replay(name(), caseSeed);
    Path folder = Files.createTempDirectory("campaign-restore");
    try {
      Path sessions = Files.createDirectories(folder.resolve(WindowStart.SESSIONS));
      Path record = folder.resolve("record.sqlite");
      Path backup = folder.resolve("backup.sqlite");
      int count = 2 + random.nextInt(3);
      int backedUp = random.nextInt(count);
      for (int i = 0; i < count; i++) {
        write(sessions.resolve("2026-11-2" + i + "-100000-000.session"), random);
        start(folder, "now-" + i, replay, tally);
        if (i == backedUp) {
          WorkshopRecord.backUp(record, backup);
        }
      }
      if (random.nextInt(3) == 0) {
        for (String ending : List.of("", "-wal", "-shm")) {
          Files.deleteIfExists(folder.resolve("record.sqlite" + ending));
        }
        tally.add("records that were lost", 1);
      } else {
        Command.Came came =
            Command.of(
                folder, "record", "restore", "--record", record.toString(), backup.toString());
        if (came.code() != 0) {
          tally.breaks(TROUBLE, replay, came.text());
        }
        tally.add("older records that were put in place", 1);
      }
      tally.add(unit(), 1);
      start(folder, "then", replay, tally);
      check(sessions, record, replay, tally);
    } finally {
      Folders.delete(folder);
    }
  }

  private static void start(Path folder, String name, String replay, Tally tally) {
    List<String> said = WindowStart.importMissing(folder, RecordDump.CLOCK, name);
    if (!said.isEmpty()) {
      tally.breaks(TROUBLE, replay, said.toString());
    }
  }

  static void write(Path file, Random random) throws IOException {
    SessionLines lines = new SessionLines();
    BenchDay day = new BenchDay(random, lines::add);
    day.begins(true);
    for (int i = 0; i < 8; i++) {
      day.goesOn();
    }
    day.ends();
    Files.writeString(file, lines.text());
  }

  static void check(Path sessions, Path record, String replay, Tally tally) throws IOException {
    try (var files = Files.list(sessions);
        WorkshopRecord open = WorkshopRecord.open(record, RecordDump.CLOCK)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".session")).sorted().toList()) {
        for (FiringResult each : Folded.of(Files.readAllLines(file)).fold().session().results()) {
          tally.add("firings", 1);
          if (open.firing(each.key()).isEmpty()) {
            tally.breaks(GONE, replay, file.getFileName() + ": " + each.key());
          }
        }
      }
    }
  }
}
