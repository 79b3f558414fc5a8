package org.halflight.bench;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.SessionFile.Contents;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Reads a session file once: all of it, its end, or its first event. */
final class SessionReader {
  private static final int END_BYTES = 16_384;

  private final Path path;
  private final FileChannel channel;
  private final List<BenchEvent> events = new ArrayList<>();
  private long lastNumber;
  private int damaged;

  /** Damaged lines since the last mark: what is missing may have been in them. */
  private int sinceMark;

  private SessionReader(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /** What is read. */
  interface Part<T> {
    T of(SessionReader file) throws IOException;
  }

  /**
   * Reads a part of a file.
   *
   * @throws Trouble when the file is not there, cannot be read, is none of ours or of a later form
   */
  static <T> T read(Path path, Part<T> part) {
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      return part.of(new SessionReader(path, channel));
    } catch (NoSuchFileException e) {
      throw new Trouble(Words.say("session.missing", path), e);
    } catch (IOException e) {
      throw new Trouble(Words.say("session.unreadable", path, SessionFile.reason(e)), e);
    }
  }

  /** All events. */
  Contents all() throws IOException {
    SessionLines lines = lines();
    String first = lines.next().map(SessionLines.Line::text).orElse("");
    Optional<SessionForm> form = SessionForm.of(first);
    if (form.isPresent()) {
      for (Optional<SessionLines.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
        onLine(form.get(), line.get());
      }
      return new Contents(events, damaged, form.get());
    }
    if (SessionForm.newest().heading().startsWith(first) && lines.next().isEmpty()) {
      return new Contents(List.of(), 0, SessionForm.newest());
    }
    throw new Trouble(
        Words.say(
            first.matches("halflight-session \\d+") ? "session.later" : "session.other", path));
  }

  /** The events of about the last 16 kilobytes. */
  List<BenchEvent> end() throws IOException {
    Optional<SessionForm> form = form(lines());
    if (channel.size() <= END_BYTES || form.isEmpty()) {
      return again().events();
    }
    channel.position(channel.size() - END_BYTES);
    SessionLines lines = lines();
    // The first may be the end of a line only.
    lines.next();
    for (Optional<SessionLines.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
      event(form.get(), line.get()).ifPresent(events::add);
    }
    return events;
  }

  /** The first event. */
  Optional<BenchEvent> first() throws IOException {
    SessionLines lines = lines();
    Optional<SessionForm> form = form(lines);
    if (form.isEmpty()) {
      return again().events().stream().findFirst();
    }
    for (Optional<SessionLines.Line> line = lines.next(); line.isPresent(); line = lines.next()) {
      Optional<BenchEvent> event = event(form.get(), line.get());
      if (event.isPresent()) {
        return event;
      }
    }
    return Optional.empty();
  }

  private Contents again() throws IOException {
    channel.position(0);
    return all();
  }

  private SessionLines lines() {
    return new SessionLines(Channels.newInputStream(channel));
  }

  private static Optional<SessionForm> form(SessionLines lines) throws IOException {
    return lines.next().flatMap(first -> SessionForm.of(first.text()));
  }

  private void onLine(SessionForm form, SessionLines.Line line) {
    Optional<BenchEvent> event = event(form, line);
    if (event.isPresent() && inOrder(form, event.get())) {
      events.add(event.get());
    } else if (!line.text().isEmpty()) {
      damaged++;
      sinceMark++;
    }
  }

  /** Whether an event does not stand in the file a second time; counts what is missing. */
  private boolean inOrder(SessionForm form, BenchEvent event) {
    if (!form.numbersMarks() || !(event instanceof BenchEvent.Mark mark)) {
      return true;
    }
    if (mark.number() <= lastNumber) {
      return false;
    }
    long missing = mark.number() - lastNumber - 1 - sinceMark;
    damaged += (int) Math.max(0, Math.min(missing, Integer.MAX_VALUE / 2 - damaged));
    lastNumber = mark.number();
    sinceMark = 0;
    return true;
  }

  /**
   * The event of a line. In the newer form a line without its end was refused by a full disk, or
   * cut by a death: it does not count, even if nothing but the end is missing.
   */
  private static Optional<BenchEvent> event(SessionForm form, SessionLines.Line line) {
    return line.tooLong() || (form.numbersMarks() && !line.ended())
        ? Optional.empty()
        : form.event(line.text());
  }
}
