package org.halflight.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.halflight.files.PrivateFiles;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * The file that every raw line of a session reaches first. Events are only ever added at its end.
 *
 * <p>Writing is safe for use by several threads; each event is handed to the system at once, whole
 * or not at all, and forced to the disk by {@link #settle}. Who writes holds a {@link SessionLock};
 * who reads needs none.
 */
public final class SessionFile implements AutoCloseable {
  /**
   * What was read from a session file.
   *
   * @param events all events, in order
   * @param damagedLines lines that were no events, and marks that are missing by the numbers of
   *     those beside them: the last line may have been cut short by a power cut
   * @param form of the file
   */
  public record Contents(List<BenchEvent> events, int damagedLines, SessionForm form) {
    public Contents {
      events = List.copyOf(events);
    }

    private long lastNumber() {
      return events.stream()
          .filter(BenchEvent.Mark.class::isInstance)
          .mapToLong(event -> ((BenchEvent.Mark) event).number())
          .max()
          .orElse(0);
    }
  }

  private final Path path;
  private final SessionLock lock;
  private final SeekableByteChannel channel;
  private final WholeLines lines;
  private final Contents before;
  private long lastNumber;

  private SessionFile(
      Path path, SessionLock lock, SeekableByteChannel channel, long endBytes, Contents before) {
    this.path = path;
    this.lock = lock;
    this.channel = channel;
    this.lines = new WholeLines(channel, endBytes);
    this.before = before;
    this.lastNumber = before.lastNumber();
  }

  /**
   * Starts a new session file.
   *
   * @throws Trouble when it is there already or cannot be written
   */
  public static SessionFile create(Path path) {
    try {
      PrivateFiles.makeFolderOf(path);
      if (Files.exists(path)) {
        throw new FileAlreadyExistsException(path.toString());
      }
      SessionLock lock = lock(path);
      FileChannel channel = null;
      try {
        channel =
            FileChannel.open(
                path,
                Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                PrivateFiles.ofFile(path));
        return begun(path, lock, channel);
      } catch (IOException | RuntimeException e) {
        if (channel != null) {
          // A file without its first line would only be in the way.
          channel.close();
          Files.deleteIfExists(path);
        }
        lock.close();
        throw e;
      }
    } catch (FileAlreadyExistsException exists) {
      throw new Trouble(Words.say("session.there", path), exists);
    } catch (IOException e) {
      throw new Trouble(Words.say("session.notBegun", path, reason(e)), e);
    }
  }

  private static SessionFile begun(Path path, SessionLock lock, SeekableByteChannel channel)
      throws IOException {
    return begun(path, lock, channel, SessionForm.newest());
  }

  /** A file on a channel that fails as a full disk does, for tests. */
  static SessionFile begun(
      Path path, SessionLock lock, SeekableByteChannel channel, SessionForm form)
      throws IOException {
    SessionFile file = new SessionFile(path, lock, channel, 0, new Contents(List.of(), 0, form));
    file.lines.add(form.heading());
    return file;
  }

  /**
   * Opens a session file to go on with it, in the form that it has. An empty one is begun.
   *
   * @throws Trouble when it is not there, is none, is being written or cannot be written
   */
  public static SessionFile resume(Path path) {
    read(path);
    try {
      SessionLock lock = lock(path);
      FileChannel channel = null;
      try {
        channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
        return resumed(path, lock, channel);
      } catch (IOException | RuntimeException e) {
        if (channel != null) {
          channel.close();
        }
        lock.close();
        throw e;
      }
    } catch (IOException e) {
      throw new Trouble(Words.say("session.notOpened", path, reason(e)), e);
    }
  }

  private static SessionFile resumed(Path path, SessionLock lock, FileChannel channel)
      throws IOException {
    // Once more, now that nobody else adds to it.
    Contents before = read(path);
    long end = channel.size();
    if (before.events().isEmpty() && end <= longestHeading()) {
      // Not even its first line may be whole: a start that failed.
      channel.truncate(0);
      return begun(path, lock, channel);
    }
    ByteBuffer last = ByteBuffer.allocate(1);
    channel.read(last, end - 1);
    SessionFile file = new SessionFile(path, lock, channel, end, before);
    if (last.get(0) != '\n') {
      // A cut-short last line stays as it is, but must not swallow the next event, nor count now.
      file.lines.add(before.form().numbersMarks() ? WholeLines.CUT : "");
    }
    return file;
  }

  private static int longestHeading() {
    return SessionForm.newest().heading().length();
  }

  /**
   * Reads all events of a session file. Lines that are no events are counted and passed over. A
   * file that a start left empty has none.
   *
   * @throws Trouble when the file is not there, cannot be read, is none of ours or of a later form
   */
  public static Contents read(Path path) {
    return SessionReader.read(path, SessionReader::all);
  }

  /**
   * Reads the last events of a session file, those of about its last 16 kilobytes, without reading
   * the others.
   *
   * @throws Trouble as {@link #read} does
   */
  public static List<BenchEvent> readEnd(Path path) {
    return SessionReader.read(path, SessionReader::end);
  }

  /**
   * The first event of a session file, by which it is known; empty where there is none. Reads no
   * more than that.
   *
   * @throws Trouble when the file is not there, cannot be read, is none of ours or of a later form
   */
  public static Optional<BenchEvent> first(Path path) {
    return SessionReader.read(path, SessionReader::first);
  }

  /** Where the file is. */
  public Path path() {
    return path;
  }

  /** The events that were in it when it was opened. */
  public List<BenchEvent> before() {
    return before.events();
  }

  /** The form of the file. */
  public SessionForm form() {
    return before.form();
  }

  /**
   * Adds an event at the end.
   *
   * @return the event as it stands there: a mark has its number
   * @throws Trouble when the disk does not take it; then it is not there
   */
  public synchronized BenchEvent add(BenchEvent event) {
    boolean numbered = event instanceof BenchEvent.Mark && form().numbersMarks();
    BenchEvent written = numbered ? ((BenchEvent.Mark) event).numbered(lastNumber + 1) : event;
    try {
      lines.add(form().line(written));
    } catch (IOException e) {
      throw new Trouble(Words.say("session.full", path, reason(e)), e);
    }
    lastNumber += numbered ? 1 : 0;
    return written;
  }

  /** Forces all that was added to the disk. */
  public void settle() {
    try {
      if (channel instanceof FileChannel onDisk) {
        onDisk.force(false);
      }
    } catch (IOException e) {
      throw new Trouble(Words.say("session.notForced", path, reason(e)), e);
    }
  }

  @Override
  public void close() {
    try {
      try {
        channel.close();
      } finally {
        lock.close();
      }
    } catch (IOException e) {
      throw new Trouble(Words.say("session.notClosed", path, reason(e)), e);
    }
  }

  private static SessionLock lock(Path path) throws IOException {
    return SessionLock.acquire(path)
        .orElseThrow(() -> new Trouble(Words.say("session.inUse", path)));
  }

  static String reason(Throwable e) {
    return e instanceof java.nio.file.AccessDeniedException
        ? Words.say("file.reason.permission")
        : Objects.requireNonNullElse(e.getMessage(), e.getClass().getSimpleName());
  }
}
