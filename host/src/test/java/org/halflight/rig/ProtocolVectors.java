package org.halflight.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** One line of the vectors that firmware and host share. */
record ProtocolVectors(String line, String verdict, String meaning) {
  static List<ProtocolVectors> all() throws IOException {
    return Files.readAllLines(Path.of("fixtures/protocol/vectors.tsv")).stream()
        .filter(row -> !row.startsWith("# "))
        .map(row -> row.split("\t", -1))
        .map(cells -> new ProtocolVectors(cells[0], cells[1], cells[2]))
        .toList();
  }

  @Override
  public String toString() {
    return verdict + ": " + meaning;
  }
}
