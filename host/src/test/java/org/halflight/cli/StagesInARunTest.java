package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.halflight.session.RunOption;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.Dial;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;

/** Stages of assembly in the terminal; invented cameras, simulated figures. */
class StagesInARunTest extends CommandTests {
  @Test
  void aCellThatTouchesIsFoundAtItsStage() throws Exception {
    String fit = "touching-cell";
    String sentence = "The rear cell costs 0.5 stop at 1 s (\u00b10.1).";
    int stage = 3;
    Path to = folder.resolve("to");
    assertThat(execute("practice", "--stages", "--fit", fit, "--out", to.toString())).isZero();
    String results = printed().substring(printed().indexOf("Stages of assembly:"));
    assertThat(results.lines().filter(line -> line.equals(sentence))).hasSize(1);
    assertThat(results.lines().filter(line -> line.startsWith("Look "))).hasSize(1);
    assertThat(results.indexOf(sentence)).isGreaterThan(results.indexOf("Stage " + stage + ":"));
    assertThat(printed()).contains("Hold the plate down with a finger or one screw");

    String session = to.resolve("practice.session").toString();
    assertThat(execute("replay", session)).isZero();
    assertThat(printed()).contains(results.substring(0, results.indexOf("All comparisons")));
    Path table = folder.resolve("again.csv");
    assertThat(execute("export", session, "--stages", table.toString())).isZero();
    assertThat(table).hasSameTextualContentAs(to.resolve("stages.csv"));
    assertThat(Files.readString(table)).contains("," + fit + ",");
  }

  @Test
  void anotherFitIsRefused() {
    Path to = folder.resolve("to");
    assertThat(execute("practice", "--stages", "--fit", "loose", "--out", to.toString()))
        .isEqualTo(1);
    assertThat(printed()).contains("sound, pinched-case, touching-cell, wrong-cover");
  }

  @Test
  void switchesAreTypedAndTakenBack() {
    CountDownLatch running = new CountDownLatch(1);
    String letters =
        "cover\ncover\nu\nplace over there\nplace bench\ncells rear\nu\nplace tight\nq\n";
    ByteArrayInputStream typed =
        new ByteArrayInputStream(letters.getBytes(StandardCharsets.US_ASCII)) {
          @Override
          public synchronized int read(byte[] into, int from, int most) {
            try {
              running.await();
            } catch (InterruptedException e) {
              throw new IllegalStateException(e);
            }
            return super.read(into, from, most);
          }
        };
    Terminal terminal = new Terminal(new PrintStream(out, true, StandardCharsets.UTF_8), typed);
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("typed.session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      BenchTerminal bench = new BenchTerminal(driver, terminal, CameraOperator.PERSON);
      bench.waitForRig();
      running.countDown();
      bench.run(
          RunForm.usual("", Phase.ADJUSTING, Dial.find("leaf").orElseThrow())
              .with(Map.of(RunOption.STAGES, "stages"))
              .read());
    }
    assertThat(printed().lines())
        .containsSubsequence(
            "Stage 1 is now: cover on, no cells, on the bench. Nothing was fired in it yet.",
            "Set B. Tap the release: it should open and close.",
            "Undone: the switch to: cover off, no cells, on the bench.",
            "The place is bench, loose or tight, not over there.",
            "Already so: on the bench.",
            "Stage 1 is now: cover on, rear cell in, on the bench. Nothing was fired in it yet.",
            "Undone: the switch to: cover on, rear cell in, on the bench.",
            "Stage 1 is now: cover on, no cells, in the camera, ring tight. Nothing was fired in it yet.");
  }
}
