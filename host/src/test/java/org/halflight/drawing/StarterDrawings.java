package org.halflight.drawing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the drawings of the starter rig into docs/images. */
public final class StarterDrawings {
  private static final Path FOLDER = Path.of("docs/images");

  private StarterDrawings() {}

  /** Each file with what is in it. */
  static Map<Path, String> all() {
    Map<Path, String> all = new LinkedHashMap<>();
    StarterBreadboard.STEPS.forEach(
        step ->
            all.put(
                FOLDER.resolve(step.name() + ".svg"), StarterBreadboard.picture(step).toString()));
    all.put(
        FOLDER.resolve(StarterBreadboard.UNO.name() + ".svg"),
        StarterBreadboard.picture(StarterBreadboard.UNO).toString());
    all.put(Path.of("docs/wiring-starter.svg"), StarterSchematic.picture().toString());
    return all;
  }

  /** Writes all of them. */
  public static void main(String[] args) throws IOException {
    for (Map.Entry<Path, String> each : all().entrySet()) {
      Files.writeString(each.getKey(), each.getValue());
    }
  }
}
