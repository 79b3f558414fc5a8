package org.halflight.record;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Objects;
import org.halflight.record.RecordTrouble.Reason;
import org.halflight.words.Words;

/** What errors of the database and of the file system mean for the person. */
final class SqlTrouble {
  // Primary result codes of SQLite (sqlite.org/rescode.html); extended codes hold them in the low
  // byte.
  private static final int PERM = 3;
  private static final int BUSY = 5;
  private static final int LOCKED = 6;
  private static final int READONLY = 8;
  private static final int IOERR = 10;
  private static final int CORRUPT = 11;
  private static final int FULL = 13;
  private static final int CANTOPEN = 14;
  private static final int CONSTRAINT = 19;
  private static final int NOTADB = 26;

  /** A disk with less than this left cannot hold what SQLite writes beside a record at least. */
  private static final long FULL_BYTES = 64 * 1024;

  private SqlTrouble() {}

  /** The exception to throw: a trouble, or a caller's mistake where a rule of the tables broke. */
  static RuntimeException of(Path file, SQLException e) {
    String said = why(e);
    return switch (e.getErrorCode() & 0xFF) {
      case BUSY, LOCKED -> RecordTrouble.of(Reason.IN_USE, "record.inUse", file).because(e);
      case READONLY, PERM, CANTOPEN ->
          RecordTrouble.of(Reason.READ_ONLY, "record.readOnly", file, said).because(e);
      case NOTADB -> RecordTrouble.of(Reason.DAMAGED, "record.notADatabase", file).because(e);
      case CORRUPT -> RecordTrouble.of(Reason.DAMAGED, "record.damaged", file, said).because(e);
      case FULL -> RecordTrouble.of(Reason.FULL, "record.full", file).because(e);
      case IOERR ->
          isFull(file)
              ? RecordTrouble.of(Reason.FULL, "record.full", file).because(e)
              : RecordTrouble.of(Reason.FAILED, "record.failed", file, said).because(e);
      case CONSTRAINT -> new IllegalArgumentException("not allowed by the record: " + said, e);
      default -> RecordTrouble.of(Reason.FAILED, "record.failed", file, said).because(e);
    };
  }

  /** The trouble of a file of the record that could not be opened for writing. */
  static RecordTrouble of(Path file, IOException e) {
    return isFull(file)
        ? RecordTrouble.of(Reason.FULL, "record.full", file).because(e)
        : RecordTrouble.of(Reason.READ_ONLY, "record.readOnly", file, why(e)).because(e);
  }

  /** What the database says, without the names that only programs know. */
  static String why(SQLException e) {
    // SQLite quotes from the file, with whatever stands in it.
    return Objects.requireNonNullElse(e.getMessage(), Words.say("record.noReason"))
        .replaceAll("[\\s\\p{Cntrl}]+", " ")
        .replaceAll("\\[SQLITE_\\w+\\] ?", "");
  }

  /** Why a file could not be handled, in a few words. */
  static String why(IOException e) {
    return e instanceof AccessDeniedException
        ? Words.say("record.noPermission")
        : Objects.requireNonNullElse(e.getMessage(), e.getClass().getSimpleName());
  }

  private static boolean isFull(Path file) {
    try {
      Path there = Files.exists(file) ? file : file.toAbsolutePath().getParent();
      return Files.getFileStore(there).getUsableSpace() < FULL_BYTES;
    } catch (IOException unknown) {
      return false;
    }
  }
}
