package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The examples of docs/command-line.md, run as they stand on a practice session; those for a rig
 * are asked for their help.
 */
@Tag("long")
class CommandLineDocTest extends CommandTests {
  private static final Pattern EXAMPLE =
      Pattern.compile("^\\| `halflight ([^`]+)`( \\(rig\\))? \\|");

  /** With blanks in it where it stands between quotes. */
  private static final Pattern WORD = Pattern.compile("(?:\"[^\"]*\"|[^ \"])+");

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
      String[] typed =
          WORD.matcher(words)
              .results()
              .map(word -> word.group().replace("\"", ""))
              .toArray(String[]::new);
      // Without a rig on this computer, or curtains in that session, help shows that each of the
      // words is known.
      boolean isTried = example.group(2) == null && !words.contains("--curtains");
      assertThat(execute(isTried ? typed : withHelp(typed))).as(line + "\n" + out).isZero();
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
}
