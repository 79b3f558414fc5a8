package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.halflight.cli.Halflight;
import org.halflight.cli.Surroundings;
import org.halflight.cli.Terminal;
import org.halflight.link.serial.SerialPorts;
import org.halflight.signal.LightCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A run from the command line on the simulated board, by someone who does what the lines say. */
@ExtendWith(AvrTools.class)
class CommandsOnTheBoardTest {
  @TempDir private Path folder;

  @Test
  void aRunCanBeStoppedAndGoneOnWith() throws Exception {
    try (BenchInABox box =
        BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED))) {
      box.curve(
          "c", new LightCurve(new double[] {0, 0.001, 0.0156, 0.0166}, new double[] {0, 1, 1, 0}));
      String session = folder.resolve("a.session").toString();
      String[] run = {
        "run",
        session,
        "--speeds",
        "1/60",
        "--firings",
        "3",
        "--phase",
        "adjusting",
        "--port",
        box.port()
      };
      List<String> first = new ArrayList<>();
      assertThat(execute(box, first, 2, run)).isEqualTo(1);
      assertThat(String.join("\n", first))
          .contains("The light is set")
          .contains("1/60: cock and fire (1 of 3).")
          .contains("Stopped. Everything is kept");

      List<String> second = new ArrayList<>();
      assertThat(execute(box, second, 99, run)).isZero();
      String text = String.join("\n", second);
      assertThat(text)
          .contains("The run goes on where it was stopped")
          .contains("The run is done.")
          .contains("simulated board")
          .containsPattern("1/60 +15\\.6 ms +15\\.6 ms +[-+]0\\.00 stop.* 3 of 3");
      assertThat(text).doesNotContain("Setting the light");

      List<String> rigs = new ArrayList<>();
      assertThat(execute(box, rigs, 99, "rigs", "--port", box.port())).isZero();
      assertThat(String.join("\n", rigs)).contains("BOX-0001");
    }
  }

  /** Executes a command and does what its lines ask for; types q after some firings. */
  private int execute(BenchInABox box, List<String> said, int firings, String... words)
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
      int fired = 0;
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        said.add(line);
        if (line.contains("hold the shutter open")) {
          box.say("hold +0 1");
          type(typing, "");
        } else if (line.startsWith("The light is set")) {
          box.say("hold +0 0");
        } else if (line.contains(": cock and fire")) {
          if (fired++ < firings) {
            box.say("fire +0.05 c");
          } else {
            type(typing, "q");
          }
        }
      }
      return code.get(60, TimeUnit.SECONDS);
    }
  }

  private static void type(PipedOutputStream typing, String line) throws java.io.IOException {
    typing.write((line + "\n").getBytes(StandardCharsets.UTF_8));
    typing.flush();
  }
}
