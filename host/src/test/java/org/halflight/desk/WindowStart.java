package org.halflight.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.session.Source;

/** What the window does with the files of a user when it starts, without a window. */
public final class WindowStart {
  /** Where the sessions of a user lie. */
  public static final String SESSIONS = "sessions";

  private WindowStart() {}

  /**
   * Takes in what the record lacks, as a new session begins, and ends.
   *
   * @param folder of the user
   * @param name of the session that begins
   * @return what was said about it, in sentences
   */
  public static List<String> importMissing(Path folder, Clock clock, String name) {
    Path file = folder.resolve(SESSIONS).resolve(name + ".session");
    BenchEvent.Mark begins =
        Marks.begins("test", Instant.EPOCH.atOffset(ZoneOffset.UTC), Optional.of(name));
    Workbench.begin(SessionFile.create(file), () -> 0, begins).close();
    List<String> said = new ArrayList<>();
    DeskSurroundings surroundings =
        new DeskSurroundings(folder, NoPorts::new, () -> 0, clock, "test", 1);
    try (Archive archive = new Archive(surroundings, one -> said.add(one.text()))) {
      archive.sessionBegan(SessionFile.first(file).orElseThrow(), file);
    }
    return said;
  }

  /** The session of a rig that the window would go on with. */
  public static Optional<Path> goesOnWith(Path folder) {
    return InterruptedRun.find(folder.resolve(SESSIONS), Source.RIG).map(InterruptedRun::file);
  }
}
