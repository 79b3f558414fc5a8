package org.halflight.campaign;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.serial.SerialPorts;

/** Does commands as they are typed, in this process, and keeps what they say. */
final class Command {
  /** What no sentence for a person holds. */
  private static final Pattern INNARDS =
      Pattern.compile(
          "Exception|\\tat |\\b(java|javax|sun|com|org|picocli)\\.[a-z]+\\.|StackOverflow|OutOfMemory");

  /**
   * What came of a command.
   *
   * @param code how it ended
   * @param text all that it said
   */
  record Came(int code, String text) {
    /** What is wrong about the way it ended; empty where nothing is. */
    String wrong() {
      if (code < 0 || code > 2) {
        return "code " + code;
      }
      if (code != 0 && text.isBlank()) {
        return "code " + code + " without a word";
      }
      return text.lines()
          .filter(line -> INNARDS.matcher(line).find())
          .findFirst()
          .map(line -> "innards: " + line)
          .orElse("");
    }
  }

  private Command() {}

  /**
   * @param folder where the record and the profiles of this user lie
   */
  static Came of(Path folder, String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Surroundings surroundings =
        new Surroundings(
            new Terminal(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new ByteArrayInputStream(new byte[0])),
            (List<String> given) -> new SerialPorts(given),
            System::nanoTime,
            () -> Instant.parse("2026-11-30T12:00:00Z"),
            folder,
            "test");
    try {
      int code = Halflight.execute(surroundings, words);
      return new Came(code, out.toString(StandardCharsets.UTF_8));
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      return new Came(1, "Exception out of " + Arrays.toString(words) + ": " + Thrown.said(e));
    }
  }
}
