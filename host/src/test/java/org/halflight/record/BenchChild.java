package org.halflight.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.SessionEvent;

/**
 * A bench that works until it is killed: every line goes to the session file first, every firing
 * that settles to the record. Prints a line for all it does.
 *
 * <p>Arguments: record, session file, boot count of the rig, seed, and where to stand still ({@code
 * never}, or the name of a {@link Stand} and its how manyth time).
 */
public final class BenchChild {
  /** Places between which a program can be killed. */
  enum Stand {
    LINE_ADDED,
    SESSION_FORCED,
    BEGUN,
    WRITTEN,
    COMMITTED
  }

  private final WorkshopRecord record;
  private final SessionFile session;
  private final SessionReducer fold = new SessionReducer();
  private final String stand;
  private int standCount;
  private String sessionKey = "";

  private BenchChild(Path recordFile, Path sessionFile, String stand, int standCount) {
    this.stand = stand;
    this.standCount = standCount;
    this.record =
        WorkshopRecord.open(
            recordFile, Clock.systemUTC(), point -> stand(Stand.valueOf(point.name())));
    if (Files.exists(sessionFile)) {
      List<BenchEvent> events = SessionFile.read(sessionFile).events();
      session = SessionFile.resume(sessionFile);
      // A new start ends whatever was under way; with that the file is taken in as it stands.
      session.add(new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
      events.forEach(this::learn);
      events.forEach(fold::onEvent);
      fold.breakOff();
      ImportOutcome taken = record.importSession(sessionFile);
      say("TAKEN " + taken.added() + " " + taken.completed());
    } else {
      session = SessionFile.create(sessionFile);
    }
  }

  public static void main(String[] args) {
    BenchChild child =
        new BenchChild(Path.of(args[0]), Path.of(args[1]), args[4], Integer.parseInt(args[5]));
    child.work(Long.parseLong(args[2]), new Random(Long.parseLong(args[3])));
  }

  private void work(long bootCount, Random random) {
    BenchScript script = new BenchScript("R-1", bootCount, this::happens);
    script.begins("2026-11-25T10:00:00Z").greets().lightIsSet();
    if (fold.session().run() == 0) {
      script.run("Killed often", Phase.ADJUSTING, 1000, "1/60", "1/125");
    }
    while (true) {
      script.fires(5 + 20 * random.nextDouble());
    }
  }

  private void happens(BenchEvent event) {
    session.add(event);
    stand(Stand.LINE_ADDED);
    say("LINE");
    learn(event);
    List<SessionEvent> news = fold.onEvent(event).news();
    if (fold.session().run() > 0 && record.run(sessionKey, fold.session().run()).isEmpty()) {
      record.keep(
          new Run(
              Id.ofNew(),
              Optional.empty(),
              sessionKey,
              fold.session().run(),
              fold.session().setup().orElseThrow(),
              Optional.empty()));
    }
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Settled settled) {
        settles(settled.result());
      }
    }
  }

  private void learn(BenchEvent event) {
    if (sessionKey.isEmpty()) {
      SessionStart start = SessionStart.of(event, "killed.session");
      record.begin(start);
      sessionKey = start.key();
    }
  }

  private void settles(FiringResult firing) {
    String key = firing.key().bootCount() + " " + firing.key().firstTicks();
    say("SETTLES " + key);
    session.settle();
    stand(Stand.SESSION_FORCED);
    SaveOutcome came = record.settle(sessionKey, firing);
    say("SETTLED " + key + " " + came);
  }

  /** Waits here for ever when this is the place to be killed at. */
  private void stand(Stand place) {
    if (place.name().equals(stand) && --standCount == 0) {
      say("STANDS");
      try {
        while (System.in.read() >= 0) {
          // Nobody ever writes: the parent kills.
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
