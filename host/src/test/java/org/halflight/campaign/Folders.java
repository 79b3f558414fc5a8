package org.halflight.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Takes away what a part made. */
final class Folders {
  private Folders() {}

  static void delete(Path folder) throws IOException {
    List<Path> all;
    try (Stream<Path> files = Files.walk(folder)) {
      all = files.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path each : all) {
      Files.deleteIfExists(each);
    }
  }
}
