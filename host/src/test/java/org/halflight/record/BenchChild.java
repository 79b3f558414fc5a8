package org.halflight.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.BenchFold;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.job.Run;
import org.halflight.job.RunId;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionNews;

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
  private final BenchFold fold = new BenchFold();
  private final String stand;
  private int standCount;
  private String sessionKey = "";
  private Optional<RunId> run = Optional.empty();

  private BenchChild(Path recordFile, Path sessionFile, String stand, int standCount) {
    this.stand = stand;
    this.standCount = standCount;
    this.record =
        WorkshopRecord.open(
            recordFile, Clock.systemUTC(), point -> stand(Stand.valueOf(point.name())));
    if (Files.exists(sessionFile)) {
      TakenIn taken = record.takeIn(sessionFile);
      say("TAKEN " + taken.added() + " " + taken.completed());
      List<BenchEvent> events = SessionFile.read(sessionFile).events();
      events.forEach(this::learn);
      events.forEach(fold::take);
      session = SessionFile.resume(sessionFile);
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
    if (run.isEmpty()) {
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
    if (event instanceof BenchEvent.Mark mark
        && Marks.input(mark).orElse(null) instanceof SessionInput.RunBegins begins) {
      run =
          Optional.of(
              record
                  .keep(
                      new Run(
                          RunId.NEW,
                          Optional.empty(),
                          sessionKey,
                          1,
                          begins.setup(),
                          Optional.empty(),
                          Optional.empty(),
                          Optional.empty()))
                  .id());
    }
    for (SessionNews news : fold.take(event)) {
      if (news instanceof SessionNews.Settled settled) {
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
    run = run.isPresent() ? run : record.run(sessionKey, 1).map(Run::id);
  }

  private void settles(FiringResult firing) {
    String key = firing.key().bootCount() + " " + firing.key().firstTicks();
    say("SETTLES " + key);
    session.settle();
    stand(Stand.SESSION_FORCED);
    Settling came = record.settle(sessionKey, run, firing);
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
