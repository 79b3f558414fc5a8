package org.halflight.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.BenchFold;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.RunSummary;

/** Opens session files for work and for reading. */
final class Sessions {
  private Sessions() {}

  /** Begins a session in a new file, or goes on with the one that is there. */
  static Workbench open(Path path, Surroundings surroundings) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("version", surroundings.version());
    values.put(
        "at",
        surroundings.date().get().atZone(ZoneId.systemDefault()).toOffsetDateTime().toString());
    if (!Files.exists(path)) {
      values.put("session", UUID.randomUUID().toString());
      return Workbench.begin(
          SessionFile.create(path),
          surroundings.nanos(),
          new BenchEvent.Mark(0, Marks.BEGINS, values));
    }
    BenchEvent.Mark begins = new BenchEvent.Mark(0, Marks.BEGINS, values);
    List<BenchEvent> before = SessionFile.read(path).events();
    return Workbench.resume(SessionFile.resume(path), surroundings.nanos(), before, begins);
  }

  /**
   * The firings of several session files; one that is in two of them, or a file given twice, counts
   * once.
   */
  static List<FiringResult> firings(List<Path> paths) {
    Set<FiringKey> known = new HashSet<>();
    List<FiringResult> firings = new ArrayList<>();
    for (Path path : paths) {
      BenchFold.replay(SessionFile.read(path).events()).session().results().stream()
          .filter(firing -> known.add(firing.key()))
          .forEach(firings::add);
    }
    return firings;
  }

  /** The firings summed up, each speed against its usual tolerance. */
  static List<RunSummary> summaries(List<FiringResult> firings) {
    MarkedSpeed top =
        firings.stream()
            .flatMap(firing -> firing.shown().stream())
            .min(java.util.Comparator.comparingDouble(MarkedSpeed::literalSeconds))
            .orElse(null);
    return RunSummary.of(
        firings, speed -> speed.equals(top) && isTop(top) ? Tolerance.HALF : Tolerance.THIRD);
  }

  /**
   * Half a stop is for the end of a dial, not for whatever happened to be fastest in a short run.
   */
  private static boolean isTop(MarkedSpeed speed) {
    return Dial.builtIn().stream()
        .anyMatch(dial -> dial.top().literalSeconds() == speed.literalSeconds());
  }
}
