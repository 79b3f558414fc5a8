package org.halflight.app;

import java.time.Instant;
import java.util.Optional;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.serial.SerialPorts;

/** Starts Halflight. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    Surroundings surroundings =
        new Surroundings(
            new Terminal(System.out, System.in),
            SerialPorts::new,
            System::nanoTime,
            Instant::now,
            version());
    System.exit(Halflight.execute(surroundings, args));
  }

  private static String version() {
    return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
        .orElse("from source");
  }
}
