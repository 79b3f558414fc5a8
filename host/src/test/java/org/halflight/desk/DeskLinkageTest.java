package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The linkage tested at the window, on a display of its own. Screens are left in target. */
@ExtendWith(Display.class)
@Tag("window")
class DeskLinkageTest {
  @Test
  void theLinkageIsTestedByKeys() throws Exception {
    Path folder = Path.of("target", "desk-linkage");
    clear(folder);
    try (Display display = new Display()) {
      String printed = display.run(DeskLinkage.class, folder.toString());
      assertThat(printed).endsWith("LINKAGE: done\nexit code 0");
    }
    for (String screen : List.of("2-set-up", "4-advance-only", "6-shutter-only", "8-one-click")) {
      assertThat(folder.resolve("screens").resolve(screen + ".png")).isNotEmptyFile();
    }
  }

  private static void clear(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
    Files.createDirectories(folder);
  }
}
