package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.RigFeed;
import org.halflight.link.serial.SerialPorts;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigSelector;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The time that the bench in a box publishes, and a host that goes by it. */
@Tag("board")
@ExtendWith(AvrTools.class)
class BoardClockTest {
  private static final double TICKS_PER_SECOND = 16e6;
  private static final int PINGS = 20;

  /** The last two bytes of a line are on the wire when the bench hands them over. */
  private static final double TWO_BYTES_SECONDS = 80e-6;

  @TempDir private Path folder;

  @Test
  void noLineComesBeforeItsTimeAndNoCommandArrivesBeforeItWasSent() throws Exception {
    Map<Integer, Double> sent = new HashMap<>();
    int echoes = 0;
    try (BenchInABox box = BenchInABox.start(folder, List.of(BenchInABox.NAMED));
        LiveFeed feed =
            new LiveFeed(new SerialPorts(List.of(box.port())), RigSelector.any(), box::nanos)) {
      BenchInABox.Limit limit = box.limit();
      int pings = 0;
      while (echoes < PINGS && !limit.isOver()) {
        Optional<RigFeed.Item> item = feed.next();
        if (item.isEmpty() || !(item.get() instanceof RigFeed.Item.Line line)) {
          continue;
        }
        ParsedLine parsed = LineCodec.parse(text(line.event()));
        double at = line.event().hostNanos() / 1e9;
        if (parsed instanceof ParsedLine.Command out
            && out.command() instanceof RigCommand.Ping ping) {
          sent.put(ping.token(), at);
        } else if (parsed instanceof ParsedLine.Message in) {
          if (in.message() instanceof RigMessage.Beat beat) {
            assertThat(at).isGreaterThan(beat.ticks() / TICKS_PER_SECOND - TWO_BYTES_SECONDS);
            feed.send(new RigCommand.Ping(pings++));
          } else if (in.message() instanceof RigMessage.Echo echo) {
            assertThat(sent.get(echo.token())).isLessThan(echo.receivedTicks() / TICKS_PER_SECOND);
            echoes++;
          }
        }
      }
    }
    assertThat(echoes).isEqualTo(PINGS);
  }

  private static String text(BenchEvent event) {
    if (event instanceof BenchEvent.Received received) {
      return received.line();
    }
    return event instanceof BenchEvent.Sent out ? out.line() : "";
  }

  @Test
  void itNeverRunsBackGoesOnWithTheBoardAndStandsBehindItsEnd() throws Exception {
    long last = 0;
    BenchInABox box = BenchInABox.start(folder, List.of(BenchInABox.NAMED, "end 0.9"));
    BenchInABox.Limit limit = box.limit();
    while (!limit.isOver()) {
      long now = box.nanos();
      assertThat(now).isGreaterThanOrEqualTo(last);
      last = now;
      Thread.onSpinWait();
    }
    // This thread may have looked last long before the end.
    assertThat(box.nanos()).isGreaterThanOrEqualTo(last);
    box.close();
    assertThat(box.nanos() / 1e9).isCloseTo(0.9, within(0.002));
  }

  @Test
  void wrongOptionsAreRefusedWithWhatToDo() throws Exception {
    assertThat(refused("--pace", "0")).contains("--pace is how many times faster than life");
    assertThat(refused("--pace", "fast")).contains("such as 3");
    assertThat(refused("--unpaced", "--pace", "3")).contains("--pace goes with --paced only");
    assertThat(refused("--unpaced", "--clock", "c")).contains("--clock goes with --paced only");
    assertThat(refused("--clock", folder.resolve("no/such").toString())).contains("No such file");
  }

  private static String refused(String... options) throws Exception {
    BenchInABox.mustBeBuilt();
    List<String> command =
        new ArrayList<>(List.of("firmware/build/bench", "--elf", "firmware/build/full/rig.elf"));
    command.addAll(List.of(options));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isEqualTo(2);
    return said;
  }
}
