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
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.bench.Workbench;
import org.halflight.exposure.DecidedBy;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.StopScale;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.DialSetting;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.PracticeOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Leak test and aperture check in their place of a run, typed; on the practice rig, so simulated.
 */
class LightTestsInARunTest {
  @TempDir private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final PipedInputStream keys = new PipedInputStream();
  private final PipedOutputStream keyboard = new PipedOutputStream();
  private final PracticeRig rig =
      PracticeRig.unpaced(
          InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);

  /** A person who does not work the camera: time passes on the rig, for so long and no longer. */
  private final class Bystander implements CameraOperator {
    private final String typed;
    private int patience = 2_000;
    private boolean hasTyped;

    Bystander(String typed) {
      this.typed = typed;
    }

    @Override
    public void idle() {
      assertThat(patience--).as(printed()).isPositive();
      if (!hasTyped) {
        hasTyped = true;
        type(typed);
      }
      rig.rest(0.01);
    }
  }

  @BeforeEach
  void plugInTheKeyboard() throws IOException {
    keyboard.connect(keys);
  }

  @Test
  void theRunComesToBothInTheirOrderAndGoesOn() {
    RunSetup setup = setup(List.of(UntimedTest.LEAK, UntimedTest.STOPS, UntimedTest.B), "1/60");
    Session session = run(setup, new PracticeOperator(rig, 7));

    assertThat(session.isRunDone()).as(printed()).isTrue();
    assertThat(printed())
        .containsSubsequence(
            "1/60: cock and fire",
            "Next: the leak test",
            "cover the lamp",
            "Leak test, shut and cocked: light comes through",
            "Next: the aperture check",
            "Stop down to f/5.6",
            "Aperture check against f/2.8",
            "Set B, release, hold");
    List<ExtraTest> tried = ExtraTests.of(session.results(), session.readings(), session.runs());
    StopScale scale =
        (StopScale) tried.stream().filter(StopScale.class::isInstance).findFirst().orElseThrow();
    assertThat(scale.run()).isEqualTo(1);
    assertThat(scale.phase()).contains(Phase.AS_FOUND);
    assertThat(scale.toleranceStops()).isEqualTo(0.6);
    // Opening and cocking for the readings are no firings of the run: the one after rest, one of
    // 1/60, one of B.
    assertThat(session.results().stream().filter(f -> f.outcome().isOfTheShutter())).hasSize(3);

    Session replayed = SessionReducer.replay(SessionFile.read(file()).events()).session();
    assertThat(replayed.isRunDone()).isTrue();
    assertThat(ExtraTests.of(replayed.results(), replayed.readings(), replayed.runs()))
        .usingRecursiveComparison()
        .isEqualTo(tried);
  }

  @Test
  void aTestThatIsSkippedLetsTheRunGoOn() {
    Session session = run(setup(List.of(UntimedTest.LEAK)), new Bystander("s\n"));

    assertThat(session.isRunDone()).as(printed()).isTrue();
    assertThat(session.readings()).isEmpty();
  }

  @Test
  void whatIsNoKeyIsNoReading() {
    Session session = run(setup(List.of(UntimedTest.LEAK)), new Bystander("move\nq\n"));

    assertThat(printed()).contains("Enter when it is done, s skips this step", "Left for now.");
    assertThat(session.isRunDone()).isFalse();
    assertThat(session.readings()).isEmpty();
  }

  @Test
  void fullLightIsMeasuredAgainInTheMiddleOfARun() {
    Session session = run(setup(List.of(), "1/60"), firstDoing(fires -> type("g\n")));

    assertThat(session.isRunDone()).as(printed()).isTrue();
    assertThat(printed())
        .containsSubsequence(
            "Reading for a second; keep everything still.", "Full light is 100 % of what was set.");
    assertThat(session.readings()).isEmpty();
  }

  @Test
  void atTheEndOfARunFullLightIsAskedForWhereFiringsWaitForIt() {
    Session session =
        run(
            setup(List.of(), "1/60"),
            firstDoing(
                fires -> {
                  rig.dim(0.9);
                  fires.run();
                }));

    assertThat(printed())
        .containsSubsequence(
            "No verdict yet: the light stayed below full.",
            "Some firings have no time until full light is measured again.",
            "Full light is 90 % of what was set",
            "No verdict: full light, measured since, was 90 % of what was set.");
    assertThat(session.results().stream().flatMap(r -> r.decidedBy().stream()))
        .isNotEmpty()
        .containsOnly(DecidedBy.FULL_LIGHT_AGAIN);
  }

  /** Somebody does something in place of the first firing. */
  private CameraOperator firstDoing(Consumer<Runnable> first) {
    return new PracticeOperator(rig, 7) {
      private boolean done;

      @Override
      public void fire(Optional<DialSetting> shown) {
        if (!done) {
          done = true;
          first.accept(() -> super.fire(shown));
        } else {
          super.fire(shown);
        }
      }
    };
  }

  private void type(String words) {
    try {
      keyboard.write(words.getBytes(StandardCharsets.UTF_8));
      keyboard.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Session run(RunSetup setup, CameraOperator operator) {
    AtomicLong nanos = new AtomicLong();
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file()),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      Terminal terminal = new Terminal(new PrintStream(out, true, StandardCharsets.UTF_8), keys);
      BenchTerminal bench = new BenchTerminal(driver, terminal, operator);
      bench.waitForRig();
      new BenchTerminal(driver, terminal, new PracticeOperator(rig, 7)).setLight();
      bench.run(setup);
      return workbench.fold().session();
    }
  }

  private RunSetup setup(List<UntimedTest> checks, String... speeds) {
    AcceptanceCriteria usual = AcceptanceCriteria.USUAL;
    return new RunSetup(
            "invented camera",
            Phase.AS_FOUND,
            "leaf",
            Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
            Reference.EXACT,
            1,
            checks.toArray(UntimedTest[]::new))
        .withCriteria(
            usual
                .with(RunOption.STOPS, List.of("2.8", "5.6", "16"))
                .with(RunOption.STOP_TOLERANCE, 0.6));
  }

  private Path file() {
    return folder.resolve("run.session");
  }

  private String printed() {
    return out.toString(StandardCharsets.UTF_8);
  }
}
