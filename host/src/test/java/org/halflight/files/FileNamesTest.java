package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileNamesTest {
  private static final int TEXTS = 2000;

  /** What makes a name leave its folder, or be none, on one system or another. */
  private static final List<String> NASTY =
      List.of(
          "..",
          "/",
          "\\",
          ":",
          "\0",
          "../",
          "..\\",
          "C:",
          "\n",
          "*",
          "?",
          "\"",
          "<",
          ">",
          "|",
          " ",
          ".",
          "-",
          "~",
          "$HOME",
          "%APPDATA%",
          "CON",
          "nul",
          "COM1",
          "lpt9.txt",
          "aux",
          "\u00e4",
          "\u65e5\u672c",
          "\ud83d\ude00",
          "\u202e",
          "a",
          "Z",
          "9",
          "_",
          "x".repeat(200));

  @TempDir private Path folder;

  @Test
  void noTextLeavesItsFolder(@Seed long seed) throws Exception {
    Random random = new Random(seed);
    for (int i = 0; i < TEXTS; i++) {
      StringBuilder text = new StringBuilder();
      for (int parts = random.nextInt(6); parts > 0; parts--) {
        text.append(NASTY.get(random.nextInt(NASTY.size())));
      }
      for (String name :
          List.of(
              FileNames.plain(text.toString(), "camera"),
              FileNames.distinct(text.toString(), "rig"))) {
        assertThat(name).as("of %s", text).matches("[A-Za-z0-9_-]{1,80}").doesNotStartWith("-");
        assertThat(name.toUpperCase(java.util.Locale.ROOT))
            .doesNotMatch("CON|PRN|AUX|NUL|CONIN|CONOUT|(COM|LPT)[0-9]");
        Path file = folder.resolve(name + ".pdf");
        assertThat(file.normalize().getParent()).isEqualTo(folder);
        Files.writeString(file, "");
        Files.delete(file);
      }
    }
  }

  @Test
  void plainTextsStayAsTheyAre() {
    assertThat(FileNames.distinct("BOX-0001", "rig")).isEqualTo("BOX-0001");
    assertThat(FileNames.plain("Old 6x6", "camera")).isEqualTo("Old-6x6");
    assertThat(FileNames.plain("\u65e5\u672c", "camera")).isEqualTo("camera");
  }

  @Test
  void whatIsNotPlainStaysApart() {
    assertThat(FileNames.distinct("../a", "rig"))
        .isNotEqualTo(FileNames.distinct("/a", "rig"))
        .isNotEqualTo(FileNames.distinct("a", "rig"));
    assertThat(FileNames.distinct("x".repeat(99), "rig"))
        .isNotEqualTo(FileNames.distinct("x".repeat(98), "rig"));
  }
}
