package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.halflight.signal.LightCurve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A run from the command line on the simulated board, by someone who does what the lines say. */
@ExtendWith(AvrTools.class)
@Tag("board")
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
          .contains("Left for now. Everything is kept");

      List<String> second = new ArrayList<>();
      assertThat(execute(box, second, 99, run)).isZero();
      String text = String.join("\n", second);
      assertThat(text)
          .contains("The run goes on where it was left")
          .contains("The run is done.")
          .contains("simulated board")
          .contains("Clock while measuring: ")
          .contains("this computer's clock")
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
    AtomicInteger fired = new AtomicInteger();
    return TypedCommand.execute(
        box,
        folder,
        said,
        (line, keyboard) -> {
          if (line.contains("hold the shutter open")) {
            box.say("hold +0 1");
            keyboard.type("");
          } else if (line.startsWith("The light is set")) {
            box.say("hold +0 0");
          } else if (line.contains(": cock and fire")) {
            if (fired.getAndIncrement() < firings) {
              box.say("fire +0.05 c");
            } else {
              keyboard.type("q");
            }
          }
        },
        words);
  }
}
