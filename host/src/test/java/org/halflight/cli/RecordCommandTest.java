package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import org.halflight.record.DataFolder;
import org.halflight.record.WorkshopRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The record at the command line; its firings are of an invented shutter. */
@Tag("long")
class RecordCommandTest {
  @TempDir private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private Path data;
  private Path own;
  private Path session;

  @BeforeEach
  void practise() throws Exception {
    data = folder.resolve("data");
    own = data.resolve(DataFolder.RECORD_FILE);
    Path sessions = Files.createDirectories(data.resolve(DataFolder.SESSIONS));
    assertThat(execute("practice", "--out", folder.resolve("practice").toString())).isZero();
    session =
        Files.copy(
            folder.resolve("practice/practice.session"), sessions.resolve("practice.session"));
  }

  @Test
  void aMistypedNameBeginsNoRecord() {
    Path typed = folder.resolve("recrod.sqlite");
    for (String[] words :
        new String[][] {
          {"take-in", session.toString()},
          {"recompute"},
          {"verify"},
          {"restore", session.toString()},
          {"backup", folder.resolve("copy.sqlite").toString()}
        }) {
      String[] all = new String[words.length + 3];
      all[0] = "record";
      System.arraycopy(words, 0, all, 1, words.length);
      all[words.length + 1] = "--record";
      all[words.length + 2] = typed.toString();
      assertThat(execute(all)).as(words[0]).isEqualTo(1);
      assertThat(said()).contains("There is no record " + typed);
      assertThat(typed).doesNotExist();
    }
  }

  @Test
  void aNewRecordIsBegunWhereThePersonSaysSo() {
    Path named = folder.resolve("named.sqlite");
    String[] words = {
      "record", "take-in", session.toString(), "--record", named.toString(), "--new-record"
    };
    assertThat(execute(words)).isZero();
    assertThat(named).exists();
    assertThat(execute(words)).isEqualTo(1);
    assertThat(said()).contains("Leave out --new-record");
    assertThat(execute("record", "take-in", session.toString(), "--record", named.toString()))
        .isZero();
  }

  @Test
  void theOwnRecordIsBegunByTakingInAndNotByLooking() {
    assertThat(execute("record", "verify")).isEqualTo(1);
    assertThat(said()).contains("The window begins it");
    assertThat(execute("record", "recompute")).isEqualTo(1);
    assertThat(own).doesNotExist();
    assertThat(execute("record", "take-in", session.toString())).isZero();
    assertThat(own).exists();
  }

  @Test
  void anEmptyFileAndOneOfSomethingElseAreRefusedAndLeftAlone() throws Exception {
    Path empty = Files.createFile(folder.resolve("empty.sqlite"));
    Path text = Files.writeString(folder.resolve("notes.txt"), "once upon a time ".repeat(99));
    for (Path file : new Path[] {empty, text}) {
      byte[] before = Files.readAllBytes(file);
      for (String flag : new String[] {"--new-record", "--record"}) {
        String[] words =
            flag.equals("--record")
                ? new String[] {"record", "take-in", session.toString(), flag, file.toString()}
                : new String[] {
                  "record", "take-in", session.toString(), "--record", file.toString(), flag
                };
        assertThat(execute(words)).isEqualTo(1);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
      }
    }
    assertThat(execute("record", "recompute", "--record", empty.toString())).isEqualTo(1);
    assertThat(said()).contains("is an empty file, not a record");
    // The window's own place is no other.
    Files.createFile(own);
    assertThat(execute("record", "take-in", session.toString())).isEqualTo(1);
    assertThat(Files.size(own)).isZero();
  }

  @Test
  void verifyLooksAndRepairMends() throws Exception {
    assertThat(execute("record", "take-in", session.toString())).isZero();
    assertThat(execute("record", "verify")).isZero();
    assertThat(said())
        .contains("is in order")
        .contains("Firings that agree with the session files");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + own);
        Statement statement = connection.createStatement()) {
      statement.execute("UPDATE firing SET rejection = 'never said' WHERE id = 2");
    }
    assertThat(execute("record", "verify")).isEqualTo(1);
    assertThat(said()).contains("firing 2").contains("Add --repair");
    assertThat(execute("record", "recompute")).isZero();
    assertThat(said()).contains("firing 2");
    assertThat(execute("record", "verify", "--repair")).isZero();
    assertThat(said()).contains("rewritten: 1").contains("is repaired");
    assertThat(execute("record", "verify")).isZero();
  }

  @Test
  void verifyFindsWhatTheRecordLacks() throws Exception {
    try (WorkshopRecord record = WorkshopRecord.open(own, java.time.Clock.systemUTC())) {
      assertThat(record.cameras()).isEmpty();
    }
    assertThat(execute("record", "verify")).isEqualTo(1);
    assertThat(said()).contains("the record lacks");
    assertThat(execute("record", "verify", "--repair")).isZero();
    assertThat(execute("record", "verify")).isZero();
  }

  private String said() {
    String said = out.toString(StandardCharsets.UTF_8);
    out.reset();
    return said;
  }

  private int execute(String... words) {
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    return Halflight.execute(
        new Surroundings(
            new Terminal(print, new ByteArrayInputStream(new byte[0])),
            given -> {
              throw new IllegalStateException("no port is wanted");
            },
            new java.util.concurrent.atomic.AtomicLong()::incrementAndGet,
            () -> Instant.parse("2026-11-30T10:00:00Z"),
            data,
            "test"),
        words);
  }
}
