package org.halflight.box;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.rig.LineReader;

/**
 * The simulated board run as fast as it goes, with no port; what it sent is read by the host's own
 * code.
 */
final class UnpacedBoard {
  private UnpacedBoard() {}

  static SessionReducer run(Path folder, List<String> scenario)
      throws IOException, InterruptedException {
    return run(folder, scenario, List.of());
  }

  /** The same, and the session is told something first. */
  static SessionReducer run(Path folder, List<String> scenario, List<BenchEvent.Mark> first)
      throws IOException, InterruptedException {
    BenchInABox.mustBeBuilt();
    Path script = Files.write(folder.resolve("unpaced"), scenario);
    Path sent = folder.resolve("uart");
    Process process =
        new ProcessBuilder(
                "firmware/build/bench",
                "--elf",
                "firmware/build/full/rig.elf",
                "--scenario",
                script.toString(),
                "--log",
                folder.resolve("log").toString(),
                "--unpaced",
                "--uart",
                sent.toString())
            .redirectErrorStream(true)
            .start();
    process.getOutputStream().close();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new AssertionError("the bench failed: " + printed);
    }
    SessionReducer fold = new SessionReducer();
    first.forEach(fold::onEvent);
    byte[] bytes = Files.readAllBytes(sent);
    for (String line : new LineReader().accept(bytes, bytes.length)) {
      fold.onEvent(new BenchEvent.Received(0, line));
    }
    return fold;
  }
}
