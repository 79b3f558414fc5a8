package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A short session file: a run as found around the golden lines of the practice rig. */
final class TinySession {
  private static final Path LINES = Path.of("fixtures/practice/short_session.txt");

  private TinySession() {}

  static Path write(Path file) throws IOException {
    return write(file, "mine", "1/60");
  }

  /** The same of a camera of this label, at this marked speed. */
  static Path write(Path file, String camera, String speed) throws IOException {
    return Files.writeString(file, text(camera, speed, Files.readAllLines(LINES)));
  }

  /** The same with an edge of each firing lost on the way, so that none can be used. */
  static Path damaged(Path file) throws IOException {
    return Files.writeString(
        file,
        text(
            "mine",
            "1/60",
            Files.readAllLines(LINES).stream()
                .filter(line -> !line.matches("E .... 2 .*"))
                .toList()));
  }

  private static String text(String camera, String speed, List<String> lines) {
    return "halflight-session 1\nM 1 run camera="
        + camera.replace("%", "%25").replace(" ", "%20").replace("=", "%3D")
        + " phase=as-found dial=custom speeds="
        + speed
        + " reference=exact firings=3\n"
        + IntStream.range(0, lines.size())
            .mapToObj(i -> "R " + (2 + i) + " " + lines.get(i).replace("%", "%25") + "\n")
            .collect(Collectors.joining());
  }
}
