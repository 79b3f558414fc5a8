package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Function;
import javax.swing.SwingUtilities;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.desk.view.Message;
import org.halflight.fixtures.Turns;
import org.halflight.job.Camera;
import org.halflight.job.Visit;
import org.halflight.job.WorkEntry;
import org.halflight.record.DataFolder;
import org.halflight.record.SessionStart;
import org.halflight.record.WorkshopRecord;
import org.halflight.session.AdjustedAt;
import org.halflight.session.Phase;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.speeds.Dial;
import org.halflight.speeds.ShutterKind;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions that the record does not hold come into it when the window begins. */
class ArchiveTest {
  private static final Path PRACTICE = Path.of("fixtures/practice/short_session.txt");

  private static final Instant NOW = Instant.parse("2026-11-02T10:00:00Z");

  @TempDir private Path folder;
  private Path sessions;
  private Path old;
  private final List<Message> said = new CopyOnWriteArrayList<>();

  @BeforeEach
  void copy() throws Exception {
    sessions = Files.createDirectories(folder.resolve(DataFolder.SESSIONS));
    old = sessions.resolve("2026-11-01-100000-000-practice.session");
    try (SessionFile session = SessionFile.create(old)) {
      long nanos = 0;
      for (String line : Files.readAllLines(PRACTICE)) {
        session.add(new BenchEvent.Received(nanos++, line));
      }
    }
  }

  @Test
  void aSessionComesBackWhateverMarkLiesBesideIt() throws Exception {
    Path mark = Files.writeString(sessions.resolve(old.getFileName() + ".kept"), "");
    begin(1);
    assertThat(said).isEmpty();
    int firings = firings();
    assertThat(firings).isPositive();
    assertThat(mark).doesNotExist();
    try (var files = Files.list(sessions)) {
      assertThat(files.filter(file -> file.toString().endsWith(".kept"))).isEmpty();
    }
    // The record is lost; the session is not.
    Files.delete(folder.resolve(DataFolder.RECORD_FILE));
    begin(2);
    assertThat(firings()).isEqualTo(firings);
  }

  @Test
  void aSessionThatCannotBeReadKeepsNoOtherOut() throws Exception {
    Files.writeString(sessions.resolve("2026-10-01-100000-000.session"), "something else\n");
    begin(1);
    assertThat(said)
        .extracting(Message::text)
        .anyMatch(sentence -> sentence.contains("not a Halflight session file"));
    assertThat(firings()).isPositive();
  }

  @Test
  void allIsHeldAtTheEnd() throws Exception {
    begin(1);
    try (WorkshopRecord record =
        WorkshopRecord.open(folder.resolve(DataFolder.RECORD_FILE), Clock.systemUTC())) {
      assertThat(record.notTakenIn(sessions)).isEmpty();
    }
  }

  /** Undoing an adjustment strikes its line; a camera named by mistake gives its runs back. */
  @Test
  void anAdjustmentAndANamingThatAreUndoneLeaveNothingThatCounts() throws Exception {
    BenchEvent.Mark begins = begins(9);
    Path file = sessions.resolve("2026-11-02-100009-000.session");
    try (SessionFile session = SessionFile.create(file)) {
      session.add(begins);
    }
    List<Object> seen = new CopyOnWriteArrayList<>();
    try (Archive archive = archive()) {
      archive.sessionBegan(begins, file);
      BlockingQueue<Visit> kept = new LinkedBlockingQueue<>();
      archive.ask(
          record -> {
            Camera camera =
                record.keep(Camera.of("a slip", ShutterKind.LEAF, Dial.builtIn().get(0)));
            return record.keep(Visit.begins(camera.id(), "", NOW));
          },
          kept::add);
      Visit visit = Turns.next(kept);
      archive.runBegan(1, RunForm.usual("a slip", Phase.ADJUSTING, Dial.builtIn().get(0)).read());
      archive.isFor(visit);
      archive.adjusted(new AdjustedAt(1, 0, "spring"));
      archive.adjusted(new AdjustedAt(1, 0, "spring, a turn more"));
      SessionInput.Adjusted last = new SessionInput.Adjusted("spring, a turn more");
      archive.happened(List.of(new SessionEvent.Undone(last)));
      see(archive, seen, record -> texts(record, visit));
      archive.happened(List.of(new SessionEvent.Redone(last)));
      see(archive, seen, record -> texts(record, visit));
      see(archive, seen, record -> record.runs(visit.id()).size());
      archive.letsGo(visit.id());
      see(archive, seen, record -> record.runs(visit.id()).size());
      see(archive, seen, record -> record.runsWithoutCamera().size());
      see(archive, seen, record -> record.workLogWithStruck(visit.id()).size());
    }
    SwingUtilities.invokeAndWait(() -> {});
    assertThat(said).isEmpty();
    assertThat(seen)
        .containsExactly(List.of("spring"), List.of("spring", "spring, a turn more"), 1, 0, 1, 2);
  }

  private static List<String> texts(WorkshopRecord record, Visit visit) {
    return record.workLog(visit.id()).stream().map(WorkEntry::text).toList();
  }

  private static void see(
      Archive archive, List<Object> seen, Function<WorkshopRecord, Object> what) {
    archive.ask(what, seen::add);
  }

  private Archive archive() {
    return new Archive(
        new DeskSurroundings(folder, NoPorts::new, () -> 0, Clock.systemUTC(), "test", 20),
        said::add);
  }

  private static BenchEvent.Mark begins(int number) {
    return Marks.begins(
        "test",
        java.time.OffsetDateTime.parse("2026-11-02T10:00:00Z"),
        java.util.Optional.of("session-" + number));
  }

  /** Begins and ends a session in which nothing is fired. */
  private void begin(int number) {
    BenchEvent.Mark begins = begins(number);
    Path file = sessions.resolve("2026-11-02-10000" + number + "-000.session");
    try (SessionFile session = SessionFile.create(file)) {
      session.add(begins);
    }
    try (Archive archive = archive()) {
      archive.sessionBegan(begins, file);
    }
  }

  private int firings() {
    try (WorkshopRecord record =
        WorkshopRecord.open(folder.resolve(DataFolder.RECORD_FILE), Clock.systemUTC())) {
      BenchEvent first = SessionFile.read(old).events().get(0);
      return record.firings(SessionStart.of(first, "").key()).size();
    }
  }
}
