package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.bench.SessionFile;
import org.halflight.record.KeptFiring;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;

/**
 * A bench in a process of its own is killed: at random moments, behind each line of its session
 * file and at each point of a write of the record. Then everything is opened again.
 */
final class KillsPart implements Part {
  static final String LOST = "settled firings that are not in the record";
  static final String FORGOTTEN = "firings of a session file that do not come into the record";
  static final String REJECTION = "'do not count' that was kept and is gone";
  static final String BROKEN = "records that were not whole";
  static final String ENDED = "benches that ended by themselves";

  private static final List<String> PLACES =
      List.of("never", "never", "LINE", "BEGUN", "WRITTEN", "COMMITTED");

  /** A session is gone on with after so many kills, then another begins. */
  private static final int KILLS_A_SESSION = 8;

  @Override
  public String name() {
    return "kills";
  }

  @Override
  public String unit() {
    return "kills";
  }

  @Override
  public long shortSize() {
    return 12;
  }

  @Override
  public long longSize() {
    return 1_000;
  }

  @Override
  public Tally run(long seed, long size) throws Exception {
    Tally tally = new Tally(name());
    for (String law : List.of(LOST, FORGOTTEN, REJECTION, BROKEN, ENDED)) {
      tally.law(law);
    }
    Path folder = Files.createTempDirectory("campaign-kills");
    try {
      new Work(folder, tally, Seeds.replay(name(), seed)).kill(new Random(seed), size);
    } finally {
      Folders.delete(folder);
    }
    return tally;
  }

  /** All kills of a seed hang together: the same again. */
  @Override
  public Tally again(long caseSeed) throws Exception {
    return run(caseSeed, longSize());
  }

  /** One record, and one session after the other. */
  static final class Work {
    private final Path folder;
    private final Tally tally;
    private final String replay;
    private final Path recordFile;
    private final Set<FiringKey> settled = new LinkedHashSet<>();
    private final Set<FiringKey> rejected = new LinkedHashSet<>();
    private String heard = "";

    Work(Path folder, Tally tally, String replay) {
      this.folder = folder;
      this.tally = tally;
      this.replay = replay;
      recordFile = folder.resolve("record.sqlite");
    }

    void kill(Random random, long kills) throws Exception {
      for (int kill = 0; kill < kills; kill++) {
        String place = PLACES.get(kill % PLACES.size());
        String session = "session-" + kill / KILLS_A_SESSION;
        int time = place.equals("never") ? 0 : 1 + random.nextInt(place.equals("LINE") ? 60 : 12);
        try (Child child =
            new Child(
                folder,
                KilledBench.class,
                folder.toString(),
                session,
                String.valueOf(kill + 1),
                String.valueOf(random.nextLong()),
                place,
                String.valueOf(time))) {
          work(child, place, random);
          child.kill().forEach(this::onLine);
        }
        tally.add("kills", 1);
        tally.add(place.equals("never") ? "kills at random" : "kills at " + place, 1);
        check(folder.resolve(session + ".session"), kill);
        sweep();
      }
      counts();
    }

    void counts() {
      tally.add("settled firings", settled.size());
    }

    private void work(Child child, String place, Random random) throws IOException {
      int lines = place.equals("never") ? 1 + random.nextInt(60) : Integer.MAX_VALUE;
      for (int i = 0; i < lines; i++) {
        Optional<String> line = child.line();
        if (line.isEmpty()) {
          tally.breaks(ENDED, replay, heard);
          return;
        }
        if (line.get().equals("STANDS")) {
          return;
        }
        onLine(line.get());
      }
    }

    void onLine(String line) {
      heard = line;
      String[] words = line.split(" ", -1);
      if (words.length == 3 && words[0].matches("SETTLED|REJECTED")) {
        FiringKey key = new FiringKey("R-0815", Long.parseLong(words[1]), Long.parseLong(words[2]));
        (words[0].equals("SETTLED") ? settled : rejected).add(key);
      }
    }

    void check(Path session, int kill) {
      try (WorkshopRecord record = WorkshopRecord.open(recordFile, RecordDump.CLOCK)) {
        if (!record.integrityFaults().isEmpty()) {
          tally.breaks(BROKEN, replay, "kill " + kill + ": " + record.integrityFaults());
        }
        for (FiringKey key : settled) {
          if (record.firing(key).isEmpty()) {
            tally.breaks(LOST, replay, "kill " + kill + ": " + key);
          }
        }
        for (FiringKey key : rejected) {
          boolean counts = record.firing(key).flatMap(kept -> kept.result().rejection()).isEmpty();
          if (counts) {
            tally.breaks(REJECTION, replay, "kill " + kill + ": " + key);
          }
        }
        if (!Files.exists(session)) {
          return;
        }
        tally.add(
            "firings that came back from the session file", record.importSession(session).added());
        List<String> lines = new ArrayList<>(Files.readAllLines(session));
        Folded folded = Folded.of(lines);
        for (FiringResult each : folded.fold().session().results()) {
          Optional<KeptFiring> kept = record.firing(each.key());
          boolean same =
              kept.isPresent()
                  && kept.get().result().firing().edges().equals(each.firing().edges());
          if (!same) {
            tally.breaks(FORGOTTEN, replay, "kill " + kill + ": " + each.key());
          }
        }
        if (record.importSession(session).added() != 0) {
          tally.breaks(FORGOTTEN, replay, "kill " + kill + ": twice is not once");
        }
        SessionFile.resume(session).close();
      } catch (IOException | RuntimeException e) {
        tally.breaks(BROKEN, replay, "kill " + kill + ": " + Thrown.said(e));
      }
    }

    /** What a killed process leaves of its libraries. */
    private void sweep() throws IOException {
      List<Path> left;
      try (Stream<Path> files = Files.list(folder)) {
        left =
            files
                .filter(file -> !file.getFileName().toString().matches("record.*|.*session.*"))
                .sorted(Comparator.reverseOrder())
                .toList();
      }
      for (Path each : left) {
        Folders.delete(each);
      }
    }
  }
}
