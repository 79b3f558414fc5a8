package org.halflight.link.serial;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Ports that the person named: whole paths, or patterns such as {@code /dev/ttyUSB*} whose last
 * part stands for all files it fits. A pseudo-terminal is on no system's list and comes this way.
 */
final class GivenPorts {
  private GivenPorts() {}

  /** The paths that stand behind names now, in order, each once. */
  static List<String> paths(List<String> names) {
    List<String> paths = new ArrayList<>();
    for (String name : names) {
      for (String path : isPattern(name) ? fitting(name) : List.of(name)) {
        if (!paths.contains(path)) {
          paths.add(path);
        }
      }
    }
    return paths;
  }

  /** Whether a path is one of a file that is not there. A name such as COM7 has no file. */
  static boolean isMissing(String path) {
    return path.startsWith("/") && !Files.exists(Path.of(path));
  }

  private static boolean isPattern(String name) {
    return name.chars().anyMatch(c -> "*?[{".indexOf(c) >= 0);
  }

  private static List<String> fitting(String pattern) {
    int slash = pattern.lastIndexOf('/');
    List<String> fitting = new ArrayList<>();
    try {
      Path folder = Path.of(slash < 0 ? "." : pattern.substring(0, slash + 1));
      if (!Files.isDirectory(folder)) {
        return fitting;
      }
      try (DirectoryStream<Path> files =
          Files.newDirectoryStream(folder, pattern.substring(slash + 1))) {
        files.forEach(file -> fitting.add(file.toString()));
      }
    } catch (IOException | InvalidPathException | java.util.regex.PatternSyntaxException none) {
      // A folder that cannot be read, or a pattern that is none, stands for no port.
      return List.of();
    }
    Collections.sort(fitting);
    return fitting;
  }
}
