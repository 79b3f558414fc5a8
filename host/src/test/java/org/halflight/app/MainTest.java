package org.halflight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TimeZone;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The program as the system starts it. */
@Tag("kill")
@DisabledOnOs({OS.WINDOWS, OS.MAC})
class MainTest {
  private static final String DEAD = ":4711";

  @TempDir private Path folder;

  @Test
  void withADisplayThatIsDeadItWorksInTheTerminal() throws Exception {
    String printed = start("exec \"$@\"", "0");
    assertThat(printed)
        .contains("The display :4711 does not answer, so Halflight works in the terminal.")
        .contains("(hand-over.pdf) are in")
        .doesNotContain("Exception")
        .doesNotContain("\tat ")
        .endsWith("exit 0");
    assertThat(folder.resolve("practice-run").resolve("speed-map.png")).isNotEmptyFile();
  }

  @Test
  void aLimitOnTheSizeOfFilesIsASentence() throws Exception {
    // Two blocks: the session takes more.
    String printed = start("ulimit -f 2; exec \"$@\"", "1", "practice", "--out", "run");
    assertThat(printed)
        .contains("cannot be written: ")
        .doesNotContain("Exception")
        .doesNotContain("\tat ")
        .endsWith("exit 1");
    assertThat(folder.resolve("run").resolve("practice.session")).isNotEmptyFile();
  }

  /** Whole paths: the program is started in another folder. */
  private static String classPath() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .map(part -> Path.of(part).toAbsolutePath().toString())
        .collect(Collectors.joining(File.pathSeparator));
  }

  private String start(String shell, String code, String... words)
      throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                "sh",
                "-c",
                shell,
                "sh",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                classPath(),
                Main.class.getName()));
    command.addAll(List.of(words));
    Path printed = folder.resolve("printed");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile());
    builder.environment().put("DISPLAY", DEAD);
    builder.environment().put("XDG_DATA_HOME", folder.resolve("data").toString());
    builder.environment().put("HOME", folder.toString());
    Process process = builder.start();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("ends for " + code).isTrue();
    return Files.readString(printed, StandardCharsets.UTF_8) + "exit " + process.exitValue();
  }

  @Test
  void theWindowCountsDaysWhereTheComputerStands() {
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("GMT-08:00"));
      assertThat(Main.clock().getZone().normalized()).isEqualTo(ZoneOffset.ofHours(-8));
    } finally {
      TimeZone.setDefault(before);
    }
  }
}
