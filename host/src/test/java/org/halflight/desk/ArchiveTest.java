package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.desk.view.Message;
import org.halflight.record.DataFolder;
import org.halflight.record.SessionStart;
import org.halflight.record.WorkshopRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions that the record does not hold come into it when the window begins. */
class ArchiveTest {
  private static final Path PRACTICE = Path.of("fixtures/practice/short_session.txt");

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

  /** Begins and ends a session in which nothing is fired. */
  private void begin(int number) {
    BenchEvent.Mark begins =
        Marks.begins(
            "test",
            java.time.OffsetDateTime.parse("2026-11-02T10:00:00Z"),
            java.util.Optional.of("session-" + number));
    Path file = sessions.resolve("2026-11-02-10000" + number + "-000.session");
    try (SessionFile session = SessionFile.create(file)) {
      session.add(begins);
    }
    try (Archive archive =
        new Archive(
            new DeskSurroundings(folder, NoPorts::new, () -> 0, Clock.systemUTC(), "test", 20),
            said::add)) {
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
