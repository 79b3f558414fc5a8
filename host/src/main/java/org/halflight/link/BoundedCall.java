package org.halflight.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Asks a program of the system something: without a shell, for a limited time, and no more of what
 * it prints than fits a few lines.
 */
final class BoundedCall {
  private static final int BYTES_MOST = 4096;

  private final Duration patience;

  /**
   * @param patience after which the program is ended
   */
  BoundedCall(Duration patience) {
    this.patience = patience;
  }

  /** What it printed; empty where it is not there, or was not done in time. */
  Optional<String> printed(List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process;
    try {
      process = builder.start();
    } catch (IOException notThere) {
      return Optional.empty();
    }
    try {
      process.getOutputStream().close();
      // One that prints without end fills its pipe and is not done in time either.
      if (!process.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        return Optional.empty();
      }
      int bytes = Math.min(BYTES_MOST, process.getInputStream().available());
      return Optional.of(
          new String(process.getInputStream().readNBytes(bytes), StandardCharsets.ISO_8859_1));
    } catch (IOException broken) {
      return Optional.empty();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } finally {
      process.destroyForcibly();
    }
  }
}
