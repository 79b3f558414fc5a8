package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The window from end to end, on a display of its own. Its screens are left in target/desk. */
@ExtendWith(Display.class)
@Tag("window")
class DeskTest {
  @Test
  void aWholePieceOfWorkByKeysAndAllOfItStandsInHistoryAndTables() throws Exception {
    Path folder = Path.of("target", "desk");
    clear(folder);
    try (Display display = new Display()) {
      String printed = display.run(DeskEndToEnd.class, folder.toString());
      assertThat(printed).endsWith("END TO END: done\nexit code 0");
    }
    for (String screen :
        List.of(
            "1-start",
            "2-light",
            "2-rig",
            "2-rig-calibrated",
            "2-rig-checked",
            "2-rig-disc",
            "3-camera",
            "4-run",
            "5-as-found",
            "5-details",
            "5-question",
            "5-tried-bounce",
            "5-tried-asks",
            "5-tried-leak",
            "5-tried-stops",
            "6-tables",
            "6-curve",
            "7-adjusting",
            "7-bounce",
            "7-run-light",
            "7-leak-asks",
            "7-stops-asks",
            "7-lists",
            "7-as-left",
            "8-history",
            "9-keys")) {
      assertSize(folder, screen + "-1366-light", 1366, 768);
      assertSize(folder, screen + "-1920-dark", 1920, 1080);
    }
  }

  @Test
  void noLetterOfTheWindowIsFromElsewhereThanTheBundle() throws Exception {
    Path folder = Path.of("target", "desk-pseudo");
    clear(folder);
    try (Display display = new Display()) {
      assertThat(display.run(DeskPseudo.class, folder.toString()))
          .doesNotContain("UNMARKED")
          .containsPattern("read \\d{3}")
          .endsWith("exit code 0");
    }
  }

  private static void assertSize(Path folder, String name, int width, int height) throws Exception {
    var image = ImageIO.read(folder.resolve("screens").resolve(name + ".png").toFile());
    assertThat(image).as(name).isNotNull();
    assertThat(List.of(image.getWidth(), image.getHeight()))
        .as(name)
        .containsExactly(width, height);
  }

  static void clear(Path folder) throws Exception {
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
