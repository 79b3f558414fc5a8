package org.halflight.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.BenchFold;
import org.halflight.bench.SessionFile;
import org.halflight.desk.view.Said;
import org.halflight.session.Session;
import org.halflight.session.Setting;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * A run that ended without being ended: the computer or the program stopped in the middle.
 *
 * @param file its session file
 * @param events all that is in it
 * @param said what there is to say about it
 */
record InterruptedRun(Path file, List<BenchEvent> events, Said said) {
  private static final String ENDING = ".session";
  private static final String PRACTICE_ENDING = "-practice.session";

  /** The mark of a session that was ended by the person. */
  private static final String ENDS = "ends";

  /** Ending of the names of session files of a source. */
  static String ending(Source source) {
    return source == Source.PRACTICE ? PRACTICE_ENDING : ENDING;
  }

  /** The last session of a source, where it was interrupted in the middle of a run. */
  static Optional<InterruptedRun> find(Path folder, Source source) {
    return last(folder, source).flatMap(InterruptedRun::read);
  }

  private static Optional<Path> last(Path folder, Source source) {
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(ending(source)))
          .filter(file -> source == Source.PRACTICE || !file.toString().endsWith(PRACTICE_ENDING))
          .max(Comparator.comparing(Path::toString));
    } catch (IOException | UncheckedIOException unreadable) {
      return Optional.empty();
    }
  }

  private static Optional<InterruptedRun> read(Path file) {
    List<BenchEvent> events;
    try {
      events = SessionFile.read(file).events();
    } catch (Trouble unreadable) {
      // It stays where it is; a new session begins.
      return Optional.empty();
    }
    boolean ended = events.isEmpty() || isEnd(events.get(events.size() - 1));
    if (ended) {
      return Optional.empty();
    }
    Session session = BenchFold.replay(events).session();
    if (session.setup().isEmpty() || session.isRunDone()) {
      return Optional.empty();
    }
    return Optional.of(
        new InterruptedRun(
            file,
            events,
            new Said(
                Said.Kind.ATTENTION,
                Words.say(
                    "desk.say.interrupted",
                    session.results().size() + 1,
                    session.setting().map(Setting::label).orElse(""),
                    session.results().size()))));
  }

  private static boolean isEnd(BenchEvent event) {
    return event instanceof BenchEvent.Mark mark && mark.kind().equals(ENDS);
  }
}
