package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.PracticeOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two speeds at once at the terminal, on the practice rig that fires by itself. */
class TwoInARunTest {
  private static final long SEED = 20;

  @TempDir private Path folder;

  /** Types a line whenever the camera waits for an adjustment. */
  private static final class Adjusting extends PracticeOperator {
    private final Queue<String> lines =
        new ArrayDeque<>(List.of("u", "y", "v 1 1", "v", "v 1 1/15", "q"));
    private final PipedOutputStream keys;
    private final Workbench workbench;
    private boolean cleaned;

    Adjusting(PracticeRig rig, PipedOutputStream keys, Workbench workbench) {
      super(rig, SEED);
      this.keys = keys;
      this.workbench = workbench;
    }

    @Override
    public void idle() {
      super.idle();
      Session session = workbench.fold().session();
      int firings = session.results().size();
      if (!session.isQuiet()) {
        return;
      }
      if (!cleaned && firings == 4) {
        cleaned = true;
        clean(true);
        type("a train cleaned");
      } else if (firings == 8) {
        lines.forEach(this::type);
        lines.clear();
      }
    }

    private void type(String line) {
      try {
        keys.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
        keys.flush();
      } catch (IOException closed) {
        throw new UncheckedIOException(closed);
      }
    }
  }

  @Test
  void closerAndEnoughAndUndoOfAnAdjustment() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PipedOutputStream keys = new PipedOutputStream();
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8), new PipedInputStream(keys));
    PracticeRig rig = PracticeOperator.unpacedRig(SEED, Instant.EPOCH);
    AtomicLong nanos = new AtomicLong();
    Path file = folder.resolve("two.session");
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    List<MarkedSpeed> speeds = List.of(MarkedSpeed.parse("1"), MarkedSpeed.parse("1/15"));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      BenchTerminal bench =
          new BenchTerminal(driver, terminal, new Adjusting(rig, keys, workbench));
      bench.waitForRig();
      bench.run(
          new RunSetup("", Phase.ADJUSTING, "leaf", speeds, Reference.EXACT, 5),
          Optional.of(TwoSpeeds.of(speeds.get(0), speeds.get(1))));
    }
    String said = out.toString(StandardCharsets.UTF_8);
    assertThat(said.lines())
        .containsSubsequence(
            "Two speeds at once: 2 firings at 1 s, 2 at 1/15, then adjust.",
            "1 s: cock and fire (1 of 2).",
            "1/15: cock and fire (1 of 2).",
            "Both are fired. Adjust, then note it (A).",
            "Marked: train cleaned. The next firings show what it did.",
            "1/15: cock and fire (1 of 2).",
            "1 s: cock and fire (1 of 2).",
            "Both are fired. Adjust, then note it (A).",
            "Undone: adjusted: train cleaned.",
            "Done again: adjusted: train cleaned.",
            "Two speeds at once are two different speeds of the dial, such as 1 and 1/15.",
            "One speed at a time again.",
            "Two speeds at once: 2 firings at 1 s, 2 at 1/15, then adjust.");
    assertThat(said).containsPattern("1 s: \\+0\\.\\d\\d stop \\(±0\\.\\d\\d\\), closer · 1/15: ");
    Session again = SessionReducer.replay(SessionFile.read(file).events()).session();
    assertThat(again.adjusted())
        .singleElement()
        .satisfies(
            each -> {
              assertThat(each.afterFiring()).isEqualTo(4);
              assertThat(each.words()).isEqualTo("train cleaned");
            });
    assertThat(again.two()).contains(TwoSpeeds.of(speeds.get(0), speeds.get(1)));
  }
}
