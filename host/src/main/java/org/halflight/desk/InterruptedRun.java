package org.halflight.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.desk.view.Message;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * A run that ended without being ended: the computer or the program stopped in the middle.
 *
 * @param file its session file
 * @param first the first event in it
 * @param said what there is to say about it
 */
record InterruptedRun(Path file, BenchEvent first, Message said) {
  private static final String ENDING = ".session";
  private static final String PRACTICE_ENDING = "-practice.session";

  /** Ending of the names of session files of a source. */
  static String ending(Source source) {
    return source == Source.PRACTICE ? PRACTICE_ENDING : ENDING;
  }

  /**
   * A session of a source that was interrupted in the middle of a run. What is in the files says
   * which was: clocks go wrong, and with them the dates in names. Where several were, the one that
   * was written to last comes first; the others come at later starts.
   */
  static Optional<InterruptedRun> find(Path folder, Source source) {
    return of(folder, source).stream()
        .sorted(
            Comparator.comparing(InterruptedRun::written).thenComparing(Path::toString).reversed())
        .flatMap(file -> read(file).stream())
        .findFirst();
  }

  private static List<Path> of(Path folder, Source source) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(ending(source)))
          .filter(file -> source == Source.PRACTICE || !file.toString().endsWith(PRACTICE_ENDING))
          .toList();
    } catch (IOException | UncheckedIOException unreadable) {
      return List.of();
    }
  }

  private static FileTime written(Path file) {
    try {
      return Files.getLastModifiedTime(file);
    } catch (IOException gone) {
      return FileTime.fromMillis(0);
    }
  }

  private static Optional<InterruptedRun> read(Path file) {
    List<BenchEvent> events;
    try {
      if (isEnded(SessionFile.readEnd(file))) {
        return Optional.empty();
      }
      events = SessionFile.read(file).events();
    } catch (Trouble unreadable) {
      // It stays where it is, and keeps no other out.
      return Optional.empty();
    }
    if (events.isEmpty() || isEnded(events)) {
      return Optional.empty();
    }
    return of(file, events);
  }

  /** Whether there is a run in a session that can be gone on with. */
  static boolean goesOn(Session session) {
    boolean isStage = session.setup().filter(RunSetup::isStage).isPresent();
    // A stage that is done waits for the next one, which is compared with it.
    return session.setup().isPresent() && (!session.isRunDone() || isStage);
  }

  private static Optional<InterruptedRun> of(Path file, List<BenchEvent> events) {
    Session session;
    try {
      session = SessionReducer.replay(events).session();
      if (!goesOn(session)) {
        return Optional.empty();
      }
    } catch (RuntimeException damaged) {
      // Whatever an old file does to this version: the window opens, and later sessions are found.
      return Optional.empty();
    }
    return Optional.of(
        new InterruptedRun(
            file,
            events.get(0),
            new Message(
                Message.Kind.ATTENTION,
                Words.say(
                    "desk.say.interrupted",
                    session.results().size() + 1,
                    session.setting().map(Sentences::dial).orElse(""),
                    session.results().size()))));
  }

  /** Whether the last stretch of work was ended; what the rig had sent by then may stand behind. */
  private static boolean isEnded(List<BenchEvent> events) {
    boolean ended = false;
    for (BenchEvent event : events) {
      ended = isOne(event, Marks.ENDS) || (ended && !goesOn(event));
    }
    return ended;
  }

  private static boolean goesOn(BenchEvent event) {
    return isOne(event, Marks.BEGINS) || isOne(event, Marks.RUN);
  }

  private static boolean isOne(BenchEvent event, String kind) {
    return event instanceof BenchEvent.Mark mark && mark.kind().equals(kind);
  }
}
