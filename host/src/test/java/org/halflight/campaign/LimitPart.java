package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A bench in a process of its own whose files may not grow beyond a limit of the system, the record
 * among them; after a while the limit is taken away. It says so and goes on; what had settled is
 * there. Needs the command prlimit.
 */
final class LimitPart implements Part {
  private static final int STARTS = 3;

  @Override
  public String name() {
    return "limit";
  }

  @Override
  public String unit() {
    return "benches at a limit of the system";
  }

  @Override
  public long shortSize() {
    return 2;
  }

  @Override
  public long longSize() {
    return 100;
  }

  @Override
  public Tally run(long seed, long size) throws Exception {
    Tally tally = tally();
    for (long i = 0; i < size; i++) {
      one(Seeds.of(seed, i), tally);
    }
    return tally;
  }

  @Override
  public Tally again(long caseSeed) throws Exception {
    Tally tally = tally();
    one(caseSeed, tally);
    return tally;
  }

  private Tally tally() {
    Tally tally = new Tally(name());
    for (String law :
        List.of(
            KillsPart.LOST,
            KillsPart.FORGOTTEN,
            KillsPart.REJECTION,
            KillsPart.BROKEN,
            KillsPart.ENDED,
            FullDiskPart.OTHER)) {
      tally.law(law);
    }
    return tally;
  }

  private void one(long caseSeed, Tally tally) throws Exception {
    Random random = new Random(caseSeed);
    String replay = Seeds.replay(name(), caseSeed);
    Path folder = Files.createTempDirectory("campaign-limit");
    try {
      KillsPart.Work work = new KillsPart.Work(folder, tally, replay);
      for (int start = 1; start <= STARTS; start++) {
        try (Child child =
            new Child(
                folder,
                KilledBench.class,
                folder.toString(),
                "limit",
                String.valueOf(start),
                String.valueOf(random.nextLong()),
                "never",
                "0")) {
          readLines(child, work, 10 + random.nextInt(60), replay, tally);
          child.limit(String.valueOf(1000 * (1 + random.nextInt(200))));
          readLines(child, work, 20 + random.nextInt(100), replay, tally);
          if (random.nextBoolean()) {
            child.limit("unlimited");
            readLines(child, work, 20 + random.nextInt(60), replay, tally);
          }
          child.kill().forEach(work::onLine);
        }
        tally.add(unit(), 1);
      }
      work.check(folder.resolve("limit.session"), 0);
      work.counts();
    } finally {
      Folders.delete(folder);
    }
  }

  private static void readLines(
      Child child, KillsPart.Work work, int lines, String replay, Tally tally) throws IOException {
    for (int i = 0; i < lines; i++) {
      Optional<String> line = child.line();
      if (line.isEmpty()) {
        tally.breaks(KillsPart.ENDED, replay, "at the limit");
        return;
      }
      work.onLine(line.get());
      if (line.get().startsWith("TROUBLE")) {
        tally.add("troubles that were said", 1);
      } else if (!line.get().matches("[A-Z-]+( .*)?")) {
        tally.breaks(FullDiskPart.OTHER, replay, line.get());
      }
    }
  }
}
