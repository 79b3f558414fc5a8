package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.link.serial.SerialPorts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The examples of docs/command-line.md, run as they stand on a practice session; those for a rig
 * are asked for their help.
 */
@Tag("long")
class CommandLineDocTest {
  private static final Pattern EXAMPLE =
      Pattern.compile("^\\| `halflight ([^`]+)`( \\(rig\\))? \\|");

  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();

  @Test
  void everyExampleWorks() throws Exception {
    Path practice = folder.resolve("practice");
    assertThat(execute("practice", "--out", practice.toString())).isZero();
    int examples = 0;
    for (String line : Files.readAllLines(Path.of("docs/command-line.md"))) {
      Matcher example = EXAMPLE.matcher(line);
      if (!example.find()) {
        continue;
      }
      examples++;
      String words =
          example
              .group(1)
              .replace("my.session", practice.resolve("practice.session").toString())
              .replace("FOLDER", folder.resolve("other").toString())
              .replaceAll(
                  "([a-z]+\\.(csv|png|pdf|sqlite))", Matcher.quoteReplacement(folder + "/") + "$1")
              .replace("\"my label\"", "label");
      String[] typed = words.split(" ");
      // Without a rig on this computer, help shows that each of the words is known.
      assertThat(execute(example.group(2) == null ? typed : withHelp(typed)))
          .as(line + "\n" + out)
          .isZero();
    }
    assertThat(examples).isGreaterThanOrEqualTo(10);
    assertThat(folder.resolve("map.png")).isNotEmptyFile();
    assertThat(folder.resolve("speeds.csv")).isNotEmptyFile();
    assertThat(folder.resolve("comparison.csv")).isNotEmptyFile();
    assertThat(folder.resolve("page.pdf")).isNotEmptyFile();
  }

  private static String[] withHelp(String... words) {
    String[] more = java.util.Arrays.copyOf(words, words.length + 1);
    more[words.length] = "--help";
    return more;
  }

  private int execute(String... words) {
    out.reset();
    PrintStream print = new PrintStream(out, true, StandardCharsets.UTF_8);
    Surroundings surroundings =
        new Surroundings(
            new Terminal(print, new ByteArrayInputStream(new byte[0])),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.EPOCH,
            folder,
            "test");
    return Halflight.execute(surroundings, words);
  }
}
