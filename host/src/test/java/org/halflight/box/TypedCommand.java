package org.halflight.box;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
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

  private static final long LOOK_ROUND_MILLIS = 100;

  private TypedCommand() {}

  /**
   * Executes a command to its end, by the time of the board.
   *
   * @param folder where it keeps what it keeps
   * @param said gets its lines
   * @return its exit status
   */
  static int execute(
      BenchInABox box, Path folder, List<String> said, Person person, String... words)
      throws Exception {
    BlockingQueue<Optional<String>> lines = new LinkedBlockingQueue<>();
    try (PipedInputStream keys = new PipedInputStream();
        PipedOutputStream typing = new PipedOutputStream(keys)) {
      Surroundings surroundings =
          new Surroundings(
              new Terminal(new PrintStream(new Lines(lines), true, StandardCharsets.UTF_8), keys),
              SerialPorts::new,
              box::nanos,
              () -> Instant.EPOCH,
              folder,
              "test");
      CompletableFuture<Integer> code =
          CompletableFuture.supplyAsync(
              () -> {
                try {
                  return Halflight.execute(surroundings, words);
                } finally {
                  lines.add(Optional.empty());
                }
              });
      Keyboard keyboard =
          line -> {
            typing.write((line + "\n").getBytes(StandardCharsets.UTF_8));
            typing.flush();
          };
      for (Optional<String> line = next(box, lines, said);
          line.isPresent();
          line = next(box, lines, said)) {
        said.add(line.get());
        person.reads(line.get(), keyboard);
      }
      return code.join();
    }
  }

  /** The next line, or empty at the end. */
  private static Optional<String> next(
      BenchInABox box, BlockingQueue<Optional<String>> lines, List<String> said)
      throws InterruptedException {
    BenchInABox.Limit limit = box.limit();
    Optional<String> line = lines.poll(LOOK_ROUND_MILLIS, TimeUnit.MILLISECONDS);
    while (line == null) {
      if (limit.isOver()) {
        throw new AssertionError("no line and no end after " + said);
      }
      line = lines.poll(LOOK_ROUND_MILLIS, TimeUnit.MILLISECONDS);
    }
    return line;
  }

  /** Hands over each line that is printed, without its end. */
  private static final class Lines extends OutputStream {
    private final ByteArrayOutputStream line = new ByteArrayOutputStream();
    private final BlockingQueue<Optional<String>> to;

    Lines(BlockingQueue<Optional<String>> to) {
      this.to = to;
    }

    @Override
    public synchronized void write(int value) {
      if (value == '\n') {
        to.add(Optional.of(line.toString(StandardCharsets.UTF_8).stripTrailing()));
        line.reset();
      } else {
        line.write(value);
      }
    }
  }
}
