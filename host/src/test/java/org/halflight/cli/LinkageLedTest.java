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
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.Finger;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.Reference;
import org.halflight.workflow.CameraOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The linkage test led at the terminal, by typed letters; on the practice rig, simulated. */
class LinkageLedTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final PipedOutputStream keyboard = new PipedOutputStream();
  private final PracticeRig rig =
      PracticeRig.unpaced(
          InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);

  /** Presses and types whenever nothing else is going on. */
  private final class Person implements CameraOperator {
    private final Workbench workbench;
    private int answered = -1;
    private boolean pressed;

    Person(Workbench workbench) {
      this.workbench = workbench;
    }

    @Override
    public void idle() {
      rig.rest(0.1);
      Session session = workbench.fold().session();
      if (answered < 0) {
        if (printed().contains("Press the button on the body")) {
          type("plunger 1.6");
          type("plunger 1.60 1.65");
          type("w");
          type("");
          answered = 0;
        }
      } else if (answered == session.presses().size() && !session.isRunDone()) {
        act(session);
      }
    }

    private void act(Session session) {
      if (!pressed) {
        press(session.presses().size());
        pressed = true;
      } else if (rig.isPressOver(session.latestTicks()) && session.isQuiet()) {
        // As the prompt writes it, or small.
        type(rig.wind() ? "W" : "o");
        rig.getReady();
        pressed = false;
        answered++;
      }
    }

    private void press(int number) {
      if (number == 0) {
        rig.tap();
      } else {
        boolean stops = number <= LinkageStep.STOP.presses();
        rig.press(new Finger(stops ? 1.2 : 3, Finger.Way.EVEN, stops));
      }
    }
  }

  @Test
  void lettersLeadThroughAllStepsToTheVerdict() throws IOException {
    run();

    assertThat(printed().lines())
        .containsSubsequence(
            "Keys: Enter when it is done, n goes on without the rest, q leaves. A letter needs"
                + " Enter after it.",
            "'' is no reading of the screw plunger. Write mm with a point (1.60), or turns and"
                + " divisions as you read them (3+4), the advance first.",
            "Screw plunger: the advance unlocks 0.05 mm ahead of the shutter.",
            "Set the camera up first.",
            "Press 1, rest check: NEITHER.",
            "Press 2, pause and let go: BOTH.",
            "Press 14, quick tap: BOTH.",
            "ONE CLICK. The wind turns after each picture.",
            "The run is done.");
    assertThat(printed()).contains("w if the wind turns, o if it is locked, s skips this step");
  }

  @Test
  void aShutterThatComesFirstIsSaidAtOnce() throws IOException {
    rig.adjustLinkage(ButtonLinkage.SHUTTER_FIRST);
    run();

    assertThat(printed())
        .contains("Press 2, pause and let go: SHUTTER ONLY. ")
        .contains("SHUTTER FIRST is certain. Make the shutter trip later")
        .contains("Press to the end, then wind on. Adjust it now and press A, or go on.")
        .contains("\nSHUTTER FIRST. Make the shutter trip later, or unlock the advance earlier.");
  }

  private void run() throws IOException {
    Terminal terminal =
        new Terminal(
            new PrintStream(out, true, StandardCharsets.UTF_8), new PipedInputStream(keyboard));
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("linkage.session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      BenchTerminal bench = new BenchTerminal(driver, terminal, new Person(workbench));
      bench.waitForRig();
      bench.run(
          new RunSetup(
              "", Phase.AS_LEFT, "leaf", List.of(), Reference.EXACT, 1, UntimedTest.LINKAGE));
    }
  }

  private void type(String line) {
    try {
      keyboard.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
      keyboard.flush();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }
}
