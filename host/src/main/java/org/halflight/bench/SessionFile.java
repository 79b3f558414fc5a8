package org.halflight.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.halflight.files.PrivateFiles;
import org.halflight.trouble.Trouble;

/**
 * The file that every raw line of a session reaches first. Events are only ever added at its end.
 *
 * <p>Writing is safe for use by several threads; each event is handed to the system at once and
 * forced to the disk by {@link #settle}.
 */
public final class SessionFile implements AutoCloseable {
  /**
   * What was read from a session file.
   *
   * @param events all events, in order
   * @param damagedLines lines that were no events: the last may have been cut short by a power cut
   */
  public record Contents(List<BenchEvent> events, int damagedLines) {
    public Contents {
      events = List.copyOf(events);
    }
  }

  private final Path path;
  private final FileChannel channel;

  private SessionFile(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Starts a new session file.
   *
   * @throws Trouble when it is there already or cannot be written
   */
  public static SessionFile create(Path path) {
    try {
      PrivateFiles.makeFolderOf(path);
      FileChannel channel =
          FileChannel.open(
              path,
              Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
              PrivateFiles.ofFile(path));
      lock(path, channel);
      SessionFile file = new SessionFile(path, channel);
      file.line(BenchText.HEADING);
      return file;
    } catch (java.nio.file.FileAlreadyExistsException exists) {
      throw new Trouble(
          path + " is there already and is not written over. Give another name.", exists);
    } catch (IOException e) {
      throw new Trouble(
          "The session file "
              + path
              + " cannot be written: "
              + reason(e)
              + ". Give a folder that can be written to.",
          e);
    }
  }

  /**
   * Opens a session file to go on with it.
   *
   * @throws Trouble when it is not there, is none, or cannot be written
   */
  public static SessionFile resume(Path path) {
    read(path);
    try {
      FileChannel channel =
          FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
      lock(path, channel);
      long end = channel.size();
      ByteBuffer last = ByteBuffer.allocate(1);
      channel.read(last, end - 1);
      channel.position(end);
      SessionFile file = new SessionFile(path, channel);
      if (last.get(0) != '\n') {
        // A cut-short last line stays as it is, but must not swallow the next event.
        file.line("");
      }
      return file;
    } catch (IOException e) {
      throw new Trouble(
          "The session file "
              + path
              + " cannot be written: "
              + reason(e)
              + ". What is in it stays as it is.",
          e);
    }
  }

  /**
   * Reads all events of a session file. Lines that are no events are counted and passed over.
   *
   * @throws Trouble when the file is not there, cannot be read, is none of ours or of a later form
   */
  public static Contents read(Path path) {
    List<BenchEvent> events = new ArrayList<>();
    int damaged = 0;
    try (BufferedReader reader = Files.newBufferedReader(path, StandardCharsets.ISO_8859_1)) {
      needHeading(path, reader.readLine());
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        var event = BenchText.parse(line);
        if (event.isPresent()) {
          events.add(event.get());
        } else if (!line.isEmpty()) {
          damaged++;
        }
      }
    } catch (NoSuchFileException e) {
      throw new Trouble("There is no file " + path + ". Check the name.", e);
    } catch (IOException | UncheckedIOException e) {
      throw new Trouble("The session file " + path + " cannot be read: " + reason(e) + ".", e);
    }
    return new Contents(events, damaged);
  }

  /**
   * The first event of a session file, by which it is known; empty where there is none. Reads no
   * more than that.
   *
   * @throws Trouble when the file is not there, cannot be read, is none of ours or of a later form
   */
  public static Optional<BenchEvent> first(Path path) {
    try (BufferedReader reader = Files.newBufferedReader(path, StandardCharsets.ISO_8859_1)) {
      needHeading(path, reader.readLine());
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        Optional<BenchEvent> event = BenchText.parse(line);
        if (event.isPresent()) {
          return event;
        }
      }
      return Optional.empty();
    } catch (NoSuchFileException e) {
      throw new Trouble("There is no file " + path + ". Check the name.", e);
    } catch (IOException | UncheckedIOException e) {
      throw new Trouble("The session file " + path + " cannot be read: " + reason(e) + ".", e);
    }
  }

  private static void needHeading(Path path, String heading) {
    if (!Objects.equals(heading, BenchText.HEADING)) {
      throw new Trouble(
          heading != null && heading.matches("halflight-session \\d+")
              ? path + " was written by a later Halflight. Take the newest Halflight to read it."
              : path + " is no Halflight session file. Choose a file that a run has written.");
    }
  }

  /** Where the file is. */
  public Path path() {
    return path;
  }

  /**
   * Adds an event at the end.
   *
   * @throws Trouble when the disk takes no more
   */
  public void add(BenchEvent event) {
    try {
      line(BenchText.format(event));
    } catch (IOException e) {
      throw new Trouble(
          "The session file "
              + path
              + " takes no more: "
              + reason(e)
              + ". All before is saved. Make room on the disk; the same command then goes on with"
              + " it.",
          e);
    }
  }

  /** Forces all that was added to the disk. */
  public void settle() {
    try {
      channel.force(false);
    } catch (IOException e) {
      throw new Trouble(
          "The session file " + path + " could not be forced to the disk: " + reason(e) + ".", e);
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new Trouble("The session file " + path + " could not be closed: " + reason(e) + ".", e);
    }
  }

  /** Held until the channel is closed: two programs must not write into one session. */
  private static void lock(Path path, FileChannel channel) throws IOException {
    FileLock lock;
    try {
      lock = channel.tryLock();
    } catch (OverlappingFileLockException here) {
      lock = null;
    }
    if (lock == null) {
      channel.close();
      throw new Trouble(
          "The session file "
              + path
              + " is being written by another Halflight. Nothing was changed; use that one, or give"
              + " another name.");
    }
  }

  private synchronized void line(String text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap((text + "\n").getBytes(StandardCharsets.ISO_8859_1));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  private static String reason(Throwable e) {
    return e instanceof java.nio.file.AccessDeniedException
        ? "no permission"
        : Objects.requireNonNullElse(e.getMessage(), e.getClass().getSimpleName());
  }
}
