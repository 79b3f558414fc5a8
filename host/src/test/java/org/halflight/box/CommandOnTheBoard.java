package org.halflight.box;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.serial.SerialPorts;

/**
 * The program as its main class starts it in a terminal, but for its clock, which is that of a
 * simulated board: for a test that needs a process of its own.
 */
final class CommandOnTheBoard {
  private CommandOnTheBoard() {}

  /** Takes the file of the board's clock, the folder for data, and the words of the command. */
  public static void main(String[] args) throws IOException {
    Surroundings surroundings =
        new Surroundings(
            new Terminal(System.out, System.in),
            SerialPorts::new,
            BoardClock.of(Path.of(args[0])),
            () -> Instant.EPOCH,
            Path.of(args[1]),
            "test");
    System.exit(Halflight.execute(surroundings, Arrays.copyOfRange(args, 2, args.length)));
  }
}
