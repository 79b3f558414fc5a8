package org.halflight.record;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.halflight.files.PrivateFiles;
import org.halflight.record.RecordTrouble.Reason;
import org.jspecify.annotations.Nullable;

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

  static RecordLock acquire(Path record) {
    Path name = record.getFileName();
    if (name == null || name.toString().matches("|\\.\\.?") || Files.isDirectory(record)) {
      throw RecordTrouble.of(Reason.NOT_OURS, "record.folder", record);
    }
    Path file = record.resolveSibling(name + ".lock");
    @Nullable FileChannel channel = null;
    try {
      PrivateFiles.makeFolderOf(record);
      PrivateFiles.makeIfMissing(file);
      channel = FileChannel.open(file, StandardOpenOption.WRITE);
      if (channel.tryLock() != null) {
        return new RecordLock(channel);
      }
    } catch (OverlappingFileLockException within) {
      // Taken, and by this process.
    } catch (IOException e) {
      close(channel);
      throw SqlTrouble.of(record, e);
    }
    close(channel);
    throw RecordTrouble.of(Reason.IN_USE, "record.inUse", record);
  }

  @Override
  public void close() {
    close(channel);
  }

  private static void close(@Nullable FileChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException gone) {
      // The lock is the system's and goes with the process at the latest.
    }
  }
}
