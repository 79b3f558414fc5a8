package org.halflight.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.halflight.link.serial.SerialPorts;
import org.junit.jupiter.api.io.TempDir;

/** What tests of commands have in common: a folder, what is printed, and nobody who types. */
abstract class CommandTests {
  @TempDir Path folder;

  final ByteArrayOutputStream out = new ByteArrayOutputStream();

  /** The date and time that commands are told. */
  Instant now() {
    return Instant.EPOCH;
  }

  Terminal terminal() {
    return new Terminal(
        new PrintStream(out, true, StandardCharsets.UTF_8), new ByteArrayInputStream(new byte[0]));
  }

  Surroundings surroundings() {
    return new Surroundings(
        terminal(),
        (List<String> given) -> new SerialPorts(given),
        System::nanoTime,
        this::now,
        folder,
        "test");
  }

  /** Does what the words say; what was printed before is gone. */
  int execute(String... words) {
    out.reset();
    return Halflight.execute(surroundings(), words);
  }

  String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }
}
