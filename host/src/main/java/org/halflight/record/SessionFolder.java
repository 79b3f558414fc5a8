package org.halflight.record;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.trouble.Trouble;

/** The session files of a folder, and whether a record holds them. */
public final class SessionFolder {
  private static final String ENDING = ".session";

  /** What earlier versions left beside a file that was in the record then. */
  private static final String OLD_MARK = ".session.kept";

  private SessionFolder() {}

  /** The session files of a folder, by name; none where the folder cannot be read. */
  public static List<Path> files(Path folder) {
    return ending(folder, ENDING);
  }

  /**
   * Removes the marks that earlier versions left beside files: the record itself knows which it
   * holds. One that cannot be removed stays, and means nothing.
   */
  public static void removeOldMarks(Path folder) {
    for (Path mark : ending(folder, OLD_MARK)) {
      try {
        Files.deleteIfExists(mark);
      } catch (IOException stays) {
        // It means nothing.
      }
    }
  }

  /**
   * Whether a record holds all of a file, by the file's first event and its length.
   *
   * @param taken how many bytes of each session were taken in, by its key
   */
  static boolean isHeld(Path file, Map<String, Long> taken) {
    try {
      Optional<BenchEvent> first = SessionFile.first(file);
      if (first.isEmpty()) {
        return true;
      }
      String key = SessionStart.of(first.get(), "").key();
      return taken.getOrDefault(key, 0L) >= Files.size(file);
    } catch (IOException | Trouble unreadable) {
      // Taking it in tells why.
      return false;
    }
  }

  private static List<Path> ending(Path folder, String ending) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
    } catch (IOException | UncheckedIOException unreadable) {
      return List.of();
    }
  }
}
