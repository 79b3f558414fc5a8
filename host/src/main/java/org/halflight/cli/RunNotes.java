package org.halflight.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.EffectiveEvents;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;

/**
 * What session files say about their runs beside the firings.
 *
 * @param setup what the run was asked to do, with its conditions
 * @param begunAt when the program that took it was started, by the computer's clock
 */
record RunNotes(RunSetup setup, Optional<Instant> begunAt) {
  /** All runs of some session files, in their order. */
  static List<RunNotes> of(List<Path> paths) {
    List<RunNotes> notes = new ArrayList<>();
    for (Path path : paths) {
      Optional<Instant> at = Optional.empty();
      for (BenchEvent event : EffectiveEvents.of(SessionFile.read(path).events())) {
        if (event instanceof BenchEvent.Mark mark) {
          if (mark.kind().equals(Marks.BEGINS)) {
            at = Marks.beganAt(mark).map(OffsetDateTime::toInstant);
          }
          if (Marks.input(mark).orElse(null) instanceof SessionInput.RunBegins begins) {
            notes.add(new RunNotes(begins.setup(), at));
          }
        }
      }
    }
    return notes;
  }

  /** What all runs of some session files were asked to do. */
  static List<RunSetup> setups(List<Path> paths) {
    return of(paths).stream().map(RunNotes::setup).toList();
  }

  /** The last run of a phase. */
  static Optional<RunNotes> last(List<RunNotes> notes, Phase phase) {
    return notes.stream()
        .filter(note -> note.setup.phase() == phase)
        .reduce((first, second) -> second);
  }
}
