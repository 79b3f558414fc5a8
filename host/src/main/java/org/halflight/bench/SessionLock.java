package org.halflight.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Held by the one program that writes a session file. The lock is on a file beside it, {@code
 * NAME.session.lock}: a lock on the session file itself would be lost as soon as any reader closes
 * it, and would keep readers out on Windows. A lock file that a dead program left behind locks
 * nobody out; what counts is the lock that the system holds on it.
 */
final class SessionLock implements AutoCloseable {
  /** Added to the name of the session file. */
  static final String ENDING = ".lock";

  /** One block, so that a limit on the size of files hits the session first. */
  private static final int MOST_BYTES = 512;

  private static final int MOST_TRIES = 100;

  /**
   * What this program holds: to open the lock file once more and close it would give up the lock.
   */
  private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

  private static final Random LENGTHS = new Random();

  private final Path file;
  private final FileChannel channel;

  private SessionLock(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /**
   * Takes the lock of a session file, which need not be there yet.
   *
   * @return empty when somebody holds it
   */
  static Optional<SessionLock> acquire(Path session) throws IOException {
    Path file = beside(session);
    if (!HELD.add(file)) {
      return Optional.empty();
    }
    boolean taken = false;
    try {
      Optional<SessionLock> lock = acquireFile(file);
      taken = lock.isPresent();
      return lock;
    } finally {
      if (!taken) {
        HELD.remove(file);
      }
    }
  }

  private static Optional<SessionLock> acquireFile(Path file) throws IOException {
    for (int i = 0; i < MOST_TRIES; i++) {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      boolean kept = false;
      try {
        FileLock lock = channel.tryLock();
        if (lock == null) {
          return Optional.empty();
        }
        if (isTheOneOfItsName(file, channel)) {
          kept = true;
          return Optional.of(new SessionLock(file, channel));
        }
      } finally {
        if (!kept) {
          channel.close();
        }
      }
      // Its holder cleaned it up between our opening and our locking it: another try.
    }
    throw new FileSystemException(file.toString(), null, "the lock file comes and goes");
  }

  /**
   * Whether the file that is locked still bears its name. Its length is a random number that its
   * holder gives it: to look at that opens nothing, so it gives up no lock.
   */
  private static boolean isTheOneOfItsName(Path file, FileChannel channel) throws IOException {
    int length = 1 + LENGTHS.nextInt(MOST_BYTES);
    channel.truncate(0);
    channel.write(ByteBuffer.wrap(new byte[] {'\n'}), length - 1L);
    return Files.exists(file) && Files.size(file) == length;
  }

  /** The lock file, by one name however the session file is called. */
  private static Path beside(Path session) throws IOException {
    Path absolute = session.toAbsolutePath();
    Path folder = absolute.getParent();
    Path real =
        Files.exists(session) || folder == null
            ? session.toRealPath()
            : folder.toRealPath().resolve(absolute.getFileName());
    return real.resolveSibling(real.getFileName() + ENDING);
  }

  /** Gives the lock up and cleans up. May be called twice. */
  @Override
  public void close() throws IOException {
    if (!channel.isOpen()) {
      return;
    }
    try {
      // While it is still held: after that it may be another's.
      Files.deleteIfExists(file);
    } catch (IOException stays) {
      // It stays, and locks nobody out.
    } finally {
      try {
        channel.close();
      } finally {
        HELD.remove(file);
      }
    }
  }
}
