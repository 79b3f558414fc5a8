package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.CameraOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Letters typed during a run at the terminal; nobody fires. */
class UndoInARunTest {
  @TempDir private Path folder;
  private final CountDownLatch running = new CountDownLatch(1);

  /** Letters that are typed once the run is under way. */
  private final class Typed extends ByteArrayInputStream {
    Typed(String letters) {
      super(letters.getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public synchronized int read(byte[] into, int from, int most) {
      try {
        running.await();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
      return super.read(into, from, most);
    }
  }

  @Test
  void lettersUndoAndRedo() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new Typed(
                "y\nn\nu\ny\nr slipped\ne\ne 1 camera slipped\n5\n2\n3\nu\nh\nu\nu\nu\nu\nq\n"));
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("undo.session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      BenchTerminal bench = new BenchTerminal(driver, terminal, CameraOperator.PERSON);
      bench.waitForRig();
      running.countDown();
      List<MarkedSpeed> speeds = List.of(MarkedSpeed.parse("1/30"), MarkedSpeed.parse("1/60"));
      bench.run(new RunSetup("", Phase.AS_LEFT, "leaf", speeds, Reference.EXACT, 1));
    }
    assertThat(out.toString(StandardCharsets.UTF_8).lines())
        .containsSubsequence(
            "There is nothing to redo: nothing was undone, or you did something since.",
            "1/60: cock and fire (1 of 1).",
            "Undone: on to the next speed.",
            "1/30: cock and fire (1 of 1).",
            "Done again: on to the next speed.",
            "1/60: cock and fire (1 of 1).",
            "No firing of this run is left to reject. Firings of earlier runs stay as they are.",
            "Type e and the new reason, or e, the number of the firing and the reason: e 3 camera slipped.",
            "That firing is counted, so it has no reason to change. Take it out of the count first.",
            "Fire first: this key says something about the firing just made.",
            "From the next firing on: warmed. Press 9 if that holds for the last firing too.",
            "From the next firing on: warmed, lens up. Press 9 if that holds for the last firing too.",
            "Undone: conditions from the next firing on: warmed, lens up.",
            "5: last firing: quick tap",
            "Next firing: warmed. Last firing: nothing special.",
            "Undone: conditions from the next firing on: warmed.",
            "Undone: on to the next speed.",
            "Undone: run started (As left).",
            "There is nothing to undo.");
  }
}
