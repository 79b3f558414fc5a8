package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.fixtures.Turns;
import org.halflight.job.Camera;
import org.halflight.record.RecordTrouble.Reason;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes wrong around a record is said in a sentence, and nothing measured is lost by it. */
class TroubleTest {
  @TempDir private Path folder;
  private Path file;
  private Path sessionFile;

  @BeforeEach
  void write() {
    file = folder.resolve("record.sqlite");
    sessionFile = RecordFixture.write(folder.resolve("a.session"), RecordFixture.everything("R-1"));
  }

  @Test
  void aSecondCopyInTheSameProgramIsRefused() {
    try (WorkshopRecord first = RecordFixture.open(file)) {
      assertTrouble(() -> RecordFixture.open(file), Reason.IN_USE, "is open in another Halflight");
      first.importSession(sessionFile);
    }
    try (WorkshopRecord again = RecordFixture.open(file)) {
      assertThat(again.cameras()).hasSize(1);
    }
  }

  @Test
  void aSecondCopyInAnotherProcessIsRefusedUntilTheFirstEndsHoweverThatIs() throws Exception {
    try (ChildJvm child =
        new ChildJvm(
            BenchChild.class,
            file.toString(),
            folder.resolve("other.session").toString(),
            "1",
            "1",
            BenchChild.Stand.COMMITTED.name(),
            "3")) {
      String line = child.line().orElseThrow();
      while (!line.equals("STANDS")) {
        line = child.line().orElseThrow();
      }
      assertTrouble(() -> RecordFixture.open(file), Reason.IN_USE, "is open in another Halflight");
      child.kill();
    }
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.importSession(sessionFile).added()).isPositive();
    }
  }

  @Test
  void aDamagedFileIsRefusedAndLeftAsItIs() throws IOException {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.importSession(sessionFile);
    }
    // Every page but the first is overwritten in its middle.
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      for (long at = 4096 + 100; at < channel.size(); at += 4096) {
        channel.write(
            ByteBuffer.wrap(
                "scribble".repeat(100).getBytes(java.nio.charset.StandardCharsets.US_ASCII)),
            at);
      }
    }
    byte[] before = Files.readAllBytes(file);
    assertTrouble(() -> RecordFixture.open(file), Reason.DAMAGED, "Restore the last backup");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    importedElsewhere();
  }

  @Test
  void aFileCutShortIsRefused() throws IOException {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.importSession(sessionFile);
    }
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.truncate(channel.size() / 2);
    }
    assertTrouble(() -> RecordFixture.open(file), Reason.DAMAGED, "is damaged");
    importedElsewhere();
  }

  @Test
  void aFolderIsNoRecordAndNothingIsMadeBesideIt() {
    Path within = folder.resolve("within");
    for (Path name :
        List.of(folder.getRoot(), Path.of(""), Path.of("."), Path.of(".."), folder, within)) {
      if (name.equals(within)) {
        assertThat(within.toFile().mkdir()).isTrue();
      }
      assertTrouble(() -> RecordFixture.open(name), Reason.NOT_OURS, "is a folder, not a record");
    }
    assertTrouble(
        () -> RecordFixture.open(within.resolve("..")),
        Reason.NOT_OURS,
        "is a folder, not a record");
    for (String made : List.of("null.lock", "...lock", "..lock", ".lock")) {
      assertThat(Path.of(made)).doesNotExist();
      assertThat(within.resolve(made)).doesNotExist();
    }
    assertThat(folder.resolve("within.lock")).doesNotExist();
  }

  @Test
  void noSentenceBearsANameThatOnlyTheDatabaseKnows() throws IOException {
    Path text = Files.writeString(folder.resolve("diary"), "Once upon a time. ".repeat(100));
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertTrouble(() -> record.restore(text), Reason.DAMAGED, "is not a database");
      assertThatThrownBy(() -> record.restore(text)).message().doesNotContain("SQLITE");
      assertThat(record.importSession(sessionFile).added()).isPositive();
    }
    assertThatThrownBy(() -> WorkshopRecord.backUp(text, folder.resolve("copy.sqlite")))
        .isInstanceOf(RecordTrouble.class)
        .message()
        .doesNotContain("SQLITE");
    assertThat(SqlTrouble.why(new SQLException("[SQLITE_CORRUPT] The page\n is gone")))
        .isEqualTo("The page is gone");
  }

  @Test
  void aFileOfSomethingElseIsRefusedAndLeftAsItIs() throws Exception {
    Files.writeString(file, "Once upon a time. ".repeat(100));
    byte[] text = Files.readAllBytes(file);
    assertTrouble(() -> RecordFixture.open(file), Reason.DAMAGED, "is not a database");
    assertThat(Files.readAllBytes(file)).isEqualTo(text);
    Path foreign = folder.resolve("foreign.sqlite");
    try (Connection other = Database.connection(foreign)) {
      execute(other, "CREATE TABLE stamps (country TEXT)");
    }
    byte[] stamps = Files.readAllBytes(foreign);
    assertTrouble(() -> RecordFixture.open(foreign), Reason.NOT_OURS, "not a Halflight record");
    assertThat(Files.readAllBytes(foreign)).isEqualTo(stamps);
  }

  @Test
  void aFolderThatIsNoneIsSaid() throws IOException {
    Path text = Files.writeString(folder.resolve("notes.txt"), "");
    assertTrouble(
        () -> RecordFixture.open(text.resolve("record.sqlite")),
        Reason.READ_ONLY,
        "cannot be written to");
    Path directory = Files.createDirectory(folder.resolve("directory.sqlite"));
    assertThatThrownBy(() -> RecordFixture.open(directory)).isInstanceOf(RecordTrouble.class);
  }

  @Test
  void aReadOnlyFileIsRefusedAndTheSessionIsTakenInLater() throws Exception {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      record.keep(Camera.of("before", ShutterKind.LEAF, BenchScript.DIAL));
    }
    ReadOnly guard = ReadOnly.make(file);
    try {
      // Where neither permission nor a flag binds this user, nothing can be shown but by the next
      // test.
      if (guard.binds()) {
        assertTrouble(
            () -> RecordFixture.open(file), Reason.READ_ONLY, "stay safe in the session file");
      } else {
        System.out.println("TroubleTest: no way to make a file read-only for this user");
      }
    } finally {
      guard.undo();
    }
    try (WorkshopRecord record = RecordFixture.open(file)) {
      assertThat(record.importSession(sessionFile).added()).isPositive();
      assertThat(record.cameras()).hasSize(2);
    }
  }

  @Test
  void aRecordThatBecomesReadOnlyInTheMiddleSaysSoAndCatchesUpLater() {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Live live = new Live(record);
      live.settleTo(4);
      // SQLite answers here as it does for a file system that was remounted read-only.
      set(record, "PRAGMA query_only = ON");
      assertTrouble(() -> live.settleTo(6), Reason.READ_ONLY, "cannot be written to");
    }
    try (WorkshopRecord record = RecordFixture.open(file)) {
      new Live(record).checkAll(4);
    }
  }

  @Test
  void aFullDiskIsSaidAndTheRecordGoesOnWhenThereIsRoomAgain() {
    List<BenchEvent> events =
        BenchScript.events(
            "R-1",
            1,
            script -> {
              script
                  .begins("2026-11-24T09:00:00Z")
                  .greets()
                  .lightIsSet()
                  .run("A", Phase.ADJUSTING, 99, "1/60");
              for (int i = 0; i < 60; i++) {
                script.fires(16 + i / 100.0);
              }
            });
    try (WorkshopRecord record = RecordFixture.open(file)) {
      Live live = new Live(record, events);
      live.settleTo(4);
      // A limit below what there is means: no page more.
      set(record, "PRAGMA max_page_count = 1");
      for (int characters : new int[] {2000, 200, 1}) {
        assertTrouble(
            () -> {
              for (int i = 0; i < 5000; i++) {
                record.keep(Camera.of("x".repeat(characters), ShutterKind.LEAF, BenchScript.DIAL));
              }
            },
            Reason.FULL,
            "Make room, then import the session file");
      }
      assertTrouble(() -> live.settleTo(live.all.size()), Reason.FULL, "is full");
      assertThat(record.integrityFaults()).isEmpty();
      int settled = live.next;
      set(record, "PRAGMA max_page_count = 1000000");
      live.checkAll(settled);
    }
  }

  @Test
  void aFullFileSystemIsSaidAndWhatWasKeptStays() throws Exception {
    Path small = Files.createDirectory(folder.resolve("small"));
    if (run("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", small.toString()) != 0) {
      System.out.println("TroubleTest: may not mount a small file system here; a quota stands in");
      return;
    }
    try {
      Path there = small.resolve("record.sqlite");
      int kept = 0;
      try (WorkshopRecord record = RecordFixture.open(there)) {
        Live live = new Live(record);
        live.settleTo(4);
        RecordTrouble full = null;
        while (full == null) {
          try {
            record.keep(
                Camera.of("filler " + "x".repeat(2000), ShutterKind.LEAF, BenchScript.DIAL));
            kept++;
          } catch (RecordTrouble trouble) {
            full = trouble;
          }
        }
        assertThat(full.reason()).isEqualTo(Reason.FULL);
        assertThat(record.cameras()).hasSize(kept);
      }
      // Closed and opened on the full disk, or refused in a sentence; then with room.
      try (WorkshopRecord record = RecordFixture.open(there)) {
        assertThat(record.cameras()).hasSize(kept);
      } catch (RecordTrouble trouble) {
        assertThat(trouble.reason()).isEqualTo(Reason.FULL);
      }
      assertThat(run("mount", "-o", "remount,size=8m", small.toString())).isZero();
      try (WorkshopRecord record = RecordFixture.open(there)) {
        assertThat(record.integrityFaults()).isEmpty();
        assertThat(record.cameras()).hasSize(kept);
        ImportOutcome taken = record.importSession(sessionFile);
        assertThat(taken.added()).isPositive();
        assertThat(taken.firings()).isEqualTo(taken.added() + 4);
      }
    } finally {
      run("umount", small.toString());
    }
  }

  @Test
  void aListenerThatThrowsUndoesTheWrite() {
    WorkshopRecord[] self = new WorkshopRecord[1];
    boolean[] refuse = {false};
    self[0] =
        WorkshopRecord.open(
            file,
            RecordFixture.CLOCK,
            point -> {
              if (refuse[0] && point == CommitListener.Point.WRITTEN) {
                throw new IllegalStateException("refused");
              }
            });
    try (WorkshopRecord record = self[0]) {
      refuse[0] = true;
      assertThatThrownBy(() -> record.importSession(sessionFile)).hasMessage("refused");
      refuse[0] = false;
      assertThat(record.cameras()).isEmpty();
      assertThat(record.importSession(sessionFile).known()).isZero();
    }
  }

  @Test
  void aClosedRecordSaysSo() {
    WorkshopRecord record = RecordFixture.open(file);
    record.close();
    record.close();
    assertTrouble(record::cameras, Reason.CLOSED, "is closed");
    assertTrouble(() -> record.importSession(sessionFile), Reason.CLOSED, "is closed");
  }

  @Test
  void severalThreadsMayUseOneRecord() throws Exception {
    try (WorkshopRecord record = RecordFixture.open(file)) {
      List<Thread> threads = new ArrayList<>();
      List<Throwable> failed = java.util.Collections.synchronizedList(new ArrayList<>());
      for (int i = 0; i < 4; i++) {
        String rig = "R-" + i;
        Thread thread =
            new Thread(
                () -> {
                  record.importSession(RecordFixture.everything(rig, "of " + rig), rig);
                  record.search(rig).forEach(line -> record.history(line.camera().id()));
                  record.recompute();
                });
        thread.setUncaughtExceptionHandler((t, e) -> failed.add(e));
        threads.add(thread);
        thread.start();
      }
      for (Thread thread : threads) {
        Turns.end(thread);
      }
      assertThat(failed).isEmpty();
      assertThat(record.cameras()).hasSize(4);
    }
  }

  /** Firings of the session file as they settle live. */
  private static final class Live {
    private final WorkshopRecord record;
    private final List<FiringResult> all;
    private final List<BenchEvent> events;
    private final String key;
    private int next;

    Live(WorkshopRecord record) {
      this(record, RecordFixture.everything("R-1"));
    }

    Live(WorkshopRecord record, List<BenchEvent> events) {
      this.events = events;
      SessionStart start = SessionStart.of(events.get(0), "a.session");
      this.record = record;
      this.all = SessionReducer.replay(events).session().results();
      this.key = start.key();
      record.begin(start);
    }

    void settleTo(int end) {
      while (next < end) {
        record.settle(key, all.get(next));
        next++;
      }
    }

    /** What was settled is there and no more; the rest comes with the session file. */
    void checkAll(int settled) {
      assertThat(record.firings(key)).hasSize(settled);
      assertThat(record.importSession(events, "a.session").added()).isEqualTo(all.size() - settled);
      assertThat(record.firings(key)).extracting(KeptFiring::result).isEqualTo(all);
      assertThat(record.integrityFaults()).isEmpty();
    }
  }

  private void importedElsewhere() {
    try (WorkshopRecord other = RecordFixture.open(folder.resolve("new.sqlite"))) {
      assertThat(other.importSession(sessionFile).added()).isPositive();
    }
  }

  private static void assertTrouble(
      org.assertj.core.api.ThrowableAssert.ThrowingCallable call, Reason reason, String said) {
    RecordTrouble trouble = catchThrowableOfType(RecordTrouble.class, call);
    assertThat(trouble).isNotNull();
    assertThat(trouble.reason()).isEqualTo(reason);
    assertThat(trouble).hasMessageContaining(said);
    // One line, and no place left open.
    assertThat(trouble.getMessage()).doesNotContain("\n").doesNotContain("{");
  }

  private static void set(WorkshopRecord record, String pragma) {
    record.database.write(connection -> execute(connection, pragma));
  }

  private static boolean execute(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      return statement.execute(sql);
    }
  }

  private static int run(String... command) throws Exception {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor();
    } catch (IOException noSuchCommand) {
      return -1;
    }
  }

  /**
   * A file that may not be written to, by permission, or by a flag where permissions do not bind.
   */
  private record ReadOnly(Path file, boolean binds, boolean flagged) {
    static ReadOnly make(Path file) throws Exception {
      if (file.toFile().setReadOnly() && !Files.isWritable(file)) {
        return new ReadOnly(file, true, false);
      }
      boolean flagged = run("chattr", "+i", file.toString()) == 0;
      return new ReadOnly(file, flagged, flagged);
    }

    void undo() throws Exception {
      if (flagged) {
        assertThat(run("chattr", "-i", file.toString())).isZero();
      }
      assertThat(file.toFile().setWritable(true)).isTrue();
    }
  }
}
