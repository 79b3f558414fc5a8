package org.halflight.box;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.serial.SerialPorts;

/** A command on real ports, and somebody who reads its lines as they come and types. */
final class TypedCommand {
  /** What the person does about a line. */
  @FunctionalInterface
  interface Person {
    void reads(String line, Keyboard keyboard) throws IOException;
  }

  /** Takes lines for the command. */
  @FunctionalInterface
  interface Keyboard {
    void type(String line) throws IOException;
  }

  private TypedCommand() {}

  /**
   * Executes a command to its end.
   *
   * @param folder where it keeps what it keeps
   * @param said gets its lines
   * @return its exit status
   */
  static int execute(Path folder, List<String> said, Person person, String... words)
      throws Exception {
    try (PipedInputStream keys = new PipedInputStream();
        PipedOutputStream typing = new PipedOutputStream(keys);
        PipedInputStream lines = new PipedInputStream(1 << 16);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(lines, StandardCharsets.UTF_8))) {
      PrintStream printing =
          new PrintStream(new PipedOutputStream(lines), true, StandardCharsets.UTF_8);
      Surroundings surroundings =
          new Surroundings(
              new Terminal(printing, keys),
              SerialPorts::new,
              System::nanoTime,
              () -> Instant.EPOCH,
              folder,
              "test");
      CompletableFuture<Integer> code =
          CompletableFuture.supplyAsync(
              () -> {
                try (printing) {
                  return Halflight.execute(surroundings, words);
                }
              });
      Keyboard keyboard =
          line -> {
            typing.write((line + "\n").getBytes(StandardCharsets.UTF_8));
            typing.flush();
          };
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        said.add(line);
        person.reads(line, keyboard);
      }
      return code.get(60, TimeUnit.SECONDS);
    }
  }
}
