package org.halflight.record;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.files.PrivateFiles;
import org.halflight.record.RecordTrouble.Reason;

/** Whole copies of a record, and putting one in its place. */
final class Backup {
  private Backup() {}

  /**
   * Copies the record of a connection as it stands into a new file. The copy comes under its name
   * only when it is whole and on the disk.
   *
   * @throws RecordTrouble when there is a file of that name, or it cannot be written
   */
  static void write(Connection connection, Path to) {
    if (Files.exists(to)) {
      throw RecordTrouble.of(Reason.BACKUP, "record.backup.there", to);
    }
    try {
      PrivateFiles.makeFolderOf(to);
      OutFiles.neverReplacing()
          .file(to, FileKind.RECORD)
          .write(
              (Path part) -> {
                try (PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
                  copy.setString(1, part.toAbsolutePath().toString());
                  copy.execute();
                }
              });
    } catch (SQLException e) {
      throw RecordTrouble.of(Reason.BACKUP, "record.backup.failed", to, SqlTrouble.why(e))
          .because(e);
    } catch (IOException e) {
      throw RecordTrouble.of(Reason.BACKUP, "record.backup.failed", to, SqlTrouble.why(e))
          .because(e);
    }
  }

  /**
   * Puts a backup in the place of a record that no connection has open. The file that was there
   * stays beside it. At every moment there is a whole record under its name.
   *
   * @return where the file is that was replaced
   */
  static Path restore(Path backup, Path record) {
    Path part = record.resolveSibling(record.getFileName() + ".part");
    Path aside = freeName(record, "replaced");
    try {
      // Left only when the record could not be put into its file at closing, on a full disk for
      // one.
      Path log = record.resolveSibling(record.getFileName() + "-wal");
      if (Files.exists(log) && Files.size(log) > 0) {
        throw new IOException(log + " is still needed");
      }
      copy(backup, part);
      force(part);
      keepAside(record, aside);
      move(part, record);
      return aside;
    } catch (IOException e) {
      delete(part);
      throw RecordTrouble.of(Reason.BACKUP, "record.restore.failed", backup, SqlTrouble.why(e))
          .because(e);
    }
  }

  /** A name beside a file that is not taken: {@code record.replaced.sqlite}, then with -2, -3. */
  static Path freeName(Path file, String what) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    String end = dot > 0 ? name.substring(dot) : "";
    Path free = file.resolveSibling(stem + "." + what + end);
    for (int count = 2; Files.exists(free); count++) {
      free = file.resolveSibling(stem + "." + what + "-" + count + end);
    }
    return free;
  }

  private static void keepAside(Path record, Path aside) throws IOException {
    try {
      Files.createLink(aside, record);
    } catch (UnsupportedOperationException | IOException noLinks) {
      copy(record, aside);
      force(aside);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.deleteIfExists(to);
    PrivateFiles.make(to);
    try (OutputStream out = Files.newOutputStream(to)) {
      Files.copy(from, out);
    }
  }

  static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  static void delete(Path part) {
    try {
      Files.deleteIfExists(part);
    } catch (IOException left) {
      // Only a part of a copy, and its name says so.
    }
  }
}
