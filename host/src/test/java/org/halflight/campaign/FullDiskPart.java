package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.EventLine;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.trouble.Trouble;

/**
 * The disk of a session file is full from some byte on, stays so for a few events, and has room
 * again: live and file say the same, and what came after is in the file.
 */
final class FullDiskPart implements Part {
  static final String DIFFER = "sessions whose file does not say what the bench said";
  static final String SWALLOWED = "events after a full disk that the file does not hold";
  static final String NOT_AGAIN = "session files that are refused after a full disk";
  static final String OTHER = "troubles that were no sentence";

  @Override
  public String name() {
    return "disk";
  }

  @Override
  public String unit() {
    return "full disks";
  }

  @Override
  public long shortSize() {
    return 80;
  }

  @Override
  public long longSize() {
    return 20_000;
  }

  @Override
  public Tally run(long seed, long size) throws IOException {
    Tally tally = tally();
    Path folder = Files.createTempDirectory("campaign-disk");
    try {
      for (long i = 0; i < size; i++) {
        one(folder, Seeds.of(seed, i), tally);
      }
    } finally {
      Folders.delete(folder);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws IOException {
    Tally tally = tally();
    Path folder = Files.createTempDirectory("campaign-disk");
    try {
      one(folder, caseSeed, tally);
    } finally {
      Folders.delete(folder);
    }
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    for (String law : List.of(DIFFER, SWALLOWED, NOT_AGAIN, OTHER)) {
      tally.law(law);
    }
    return tally;
  }

  private void one(Path folder, long caseSeed, Tally tally) throws IOException {
    Random random = new Random(caseSeed);
    Path real = folder.resolve("full.session");
    try {
      new Work(random, real, tally, Seeds.replay(name(), caseSeed)).work();
    } catch (RuntimeException e) {
      tally.breaks(OTHER, Seeds.replay(name(), caseSeed), Thrown.said(e));
    }
    tally.add(unit(), 1);
    try (var left = Files.list(folder)) {
      for (Path each : left.toList()) {
        Files.delete(each);
      }
    }
  }

  /** A line of the second form without number and sum. */
  private static String plain(String line) {
    return line.replaceFirst(" [0-9A-F]{8}$", "").replaceFirst("^M \\d+", "M");
  }

  /** One session on one disk. */
  private static final class Work {
    private final Random random;
    private final ShortDisk disk;
    private final Path path;
    private final Path real;
    private final Tally tally;
    private final String replay;
    private final AtomicLong nanos = new AtomicLong();
    private final List<String> said = new ArrayList<>();
    private final List<String> refused = new ArrayList<>();
    private Optional<Workbench> bench = Optional.empty();
    private int failed;
    private int patience;

    Work(Random random, Path real, Tally tally, String replay) {
      this.random = random;
      this.real = real;
      this.tally = tally;
      this.replay = replay;
      disk =
          new ShortDisk(real.getFileSystem(), random.nextInt(random.nextInt(8) == 0 ? 60 : 6000));
      path = disk.path(real);
      patience = 1 + random.nextInt(4);
    }

    void work() throws IOException {
      while (bench.isEmpty()) {
        try {
          bench = Optional.of(begin());
        } catch (Trouble full) {
          if (!disk.isFull()) {
            tally.breaks(NOT_AGAIN, replay, full.getMessage());
            return;
          }
          fails();
        }
      }
      BenchDay day = new BenchDay(random, this::happens);
      day.begins(true);
      for (int i = 0; i < 12; i++) {
        day.goesOn();
      }
      disk.hasRoom(Long.MAX_VALUE);
      String last = "M " + bench.get().now() + " reject because=the-last-word";
      happens(last);
      bench.get().close();
      compare();
    }

    private Workbench begin() {
      boolean there = Files.exists(path);
      SessionFile file = there ? SessionFile.resume(path) : SessionFile.create(path);
      BenchEvent.Mark begins =
          Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.of("full"));
      try {
        return there
            ? Workbench.resume(file, nanos::get, file.before(), begins)
            : Workbench.begin(file, nanos::get, begins);
      } catch (Trouble full) {
        file.close();
        throw full;
      }
    }

    /** A line of the rig waits where there is no room; an act that is refused does not count. */
    private void happens(String line) {
      boolean ofTheRig = line.charAt(0) != 'M';
      try {
        bench.orElseThrow().onEvent(EventLine.parse(line).orElseThrow());
        said.add(line);
      } catch (Trouble full) {
        if (!disk.isFull()) {
          tally.breaks(SWALLOWED, replay, full.getMessage());
        }
        (ofTheRig ? said : refused).add(line);
        fails();
      }
    }

    private void fails() {
      tally.add("events for which there was no room", 1);
      failed++;
      if (failed >= patience) {
        disk.hasRoom(random.nextInt(3) == 0 ? random.nextInt(500) : Long.MAX_VALUE);
        failed = 0;
      }
    }

    private void compare() throws IOException {
      List<String> lines = Files.readAllLines(real, java.nio.charset.StandardCharsets.ISO_8859_1);
      Folded replayed = Folded.of(lines);
      Folded live = Folded.of(bench.orElseThrow().fold());
      live.breaksOff();
      String difference = live.difference(replayed);
      if (!difference.isEmpty()) {
        tally.breaks(DIFFER, replay, difference);
      }
      Set<String> plain = new HashSet<>(lines.stream().map(FullDiskPart::plain).toList());
      List<String> missing = said.stream().filter(line -> !plain.contains(line)).toList();
      if (!missing.isEmpty()) {
        tally.breaks(SWALLOWED, replay, missing.size() + " events, the first " + missing.get(0));
      }
      if (refused.stream().anyMatch(plain::contains)) {
        tally.breaks(SWALLOWED, replay, "an act that was refused stands in the file");
      }
      try {
        SessionFile.resume(real).close();
      } catch (Trouble refused) {
        tally.breaks(NOT_AGAIN, replay, refused.getMessage());
      }
    }
  }
}
