package org.halflight.record;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.halflight.files.PrivateFiles;
import org.halflight.record.RecordTrouble.Reason;

/**
 * Keeps a second copy of the program from the same record: a lock of the system on a file beside
 * it, which goes with the process however that ends.
 *
 * <p>The file stays when the lock goes: to delete it would let two copies lock two files of one
 * name.
 */
final class RecordLock implements AutoCloseable {
  private final FileChannel channel;

  private RecordLock(FileChannel channel) {
    this.channel = channel;
  }

  static RecordLock take(Path record) {
    Path name = record.getFileName();
    if (name == null || name.toString().matches("|\\.\\.?") || Files.isDirectory(record)) {
      throw RecordTrouble.of(Reason.NOT_OURS, "record.folder", record);
    }
    Path file = record.resolveSibling(name + ".lock");
    FileChannel channel = null;
    boolean taken = false;
    try {
      PrivateFiles.makeFolderOf(record);
      PrivateFiles.makeIfMissing(file);
      channel = FileChannel.open(file, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      taken = lock != null;
    } catch (OverlappingFileLockException within) {
      taken = false;
    } catch (IOException e) {
      close(channel);
      throw SqlTrouble.of(record, e);
    }
    if (!taken) {
      close(channel);
      throw RecordTrouble.of(Reason.IN_USE, "record.inUse", record);
    }
    return new RecordLock(channel);
  }

  @Override
  public void close() {
    close(channel);
  }

  private static void close(FileChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException gone) {
      // The lock is the system's and goes with the process at the latest.
    }
  }
}
