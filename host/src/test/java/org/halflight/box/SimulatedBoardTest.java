package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.BenchFold;
import org.halflight.bench.SessionFile;
import org.halflight.exposure.LeafExposure;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole real path: firmware in the simulator, a pseudo-terminal, jSerialComm, the session. The
 * truth is the integral of the light curve that was put in. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
class SimulatedBoardTest {
  private static final List<String> SCENARIO = List.of("light all 40 4000", BoxBench.NAMED);
  private static final double RAMP_SECONDS = 0.001;
  private static final int RAMP_POINTS = 200;

  @TempDir private Path folder;

  @Test
  void effectiveTimesAreRightForEveryOpeningLawAndReplayIsTheSame() throws Exception {
    List<MarkedSpeed> speeds =
        List.of("1", "1/60", "1/250", "1/500").stream().map(MarkedSpeed::parse).toList();
    Path sessionFile = folder.resolve("laws.session");
    List<FiringResult> live;
    List<Double> truths = new ArrayList<>();
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, sessionFile, List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      int before = bench.session().results().size();
      System.out.println("simulated: error of the effective time, firmware in the simulator");
      for (BladeLaw law : BladeLaw.values()) {
        bench.tell(
            new SessionInput.RunBegins(
                new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, speeds, Reference.EXACT, 99)));
        for (MarkedSpeed speed : speeds) {
          bench.tell(new SessionInput.SpeedChosen(speed));
          LightCurve curve = curve(law, speed.exactSeconds(), RAMP_SECONDS);
          String name = law.name() + "_" + speed.label().replace('/', '_');
          box.curve(name, curve);
          FiringResult result = bench.fire(name);
          double truth = curve.integralSeconds();
          truths.add(truth);
          assertThat(result.outcome()).as(name).isEqualTo(Outcome.TIMED);
          double error = result.effectiveSeconds().orElseThrow() / truth - 1;
          System.out.printf(
              Locale.ROOT, "simulated: %-24s %-6s %+.3f %%%n", law, speed, 100 * error);
          assertThat(error)
              .as(name)
              .isCloseTo(0, within(speed.exactSeconds() > 0.01 ? 0.002 : 0.01));
        }
      }
      live = List.copyOf(bench.session().results());
      assertThat(live).hasSize(before + truths.size());
    }
    BenchFold replayed = BenchFold.replay(SessionFile.read(sessionFile).events());
    assertThat(replayed.session().results()).isEqualTo(live);
    assertThat(replayed.linkStatistics().bad()).isZero();
  }

  @Test
  void aShutterThatNeverFullyOpensIsReportedAsSuch() throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("never.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      for (double peak : new double[] {0.5, 0.8}) {
        LightCurve triangle =
            new LightCurve(new double[] {0, 0.0012, 0.0024}, new double[] {0, peak, 0});
        String name = "peak" + Math.round(100 * peak);
        box.curve(name, triangle);
        FiringResult result = bench.fire(name);
        assertThat(result.outcome()).as(name).isEqualTo(Outcome.NEVER_FULLY_OPEN);
        LeafExposure.NeverFullyOpen bounds = (LeafExposure.NeverFullyOpen) result.exposure();
        assertThat(bounds.lowestSeconds()).isLessThan(triangle.integralSeconds());
        bounds
            .highestSeconds()
            .ifPresent(h -> assertThat(h).isGreaterThan(triangle.integralSeconds()));
      }
    }
  }

  @Test
  void aPulledCableKeepsWhatWasMeasuredAndTheRunGoesOnUnderAnotherName() throws Exception {
    MarkedSpeed speed = MarkedSpeed.parse("1/60");
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("cable.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.tell(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, List.of(speed), Reference.EXACT, 4)));
      box.curve("sixtieth", curve(BladeLaw.AREA_LINEAR, speed.exactSeconds(), RAMP_SECONDS));
      FiringResult first = bench.fire("sixtieth");
      bench.fire("sixtieth");
      String before = box.realPort();
      box.say("unplug +0");
      bench.until(
          "the loss of the link",
          () ->
              bench.changes().stream()
                  .anyMatch(c -> c.state() == org.halflight.link.LinkState.LOST));
      assertThat(bench.session().goodAt(speed)).isEqualTo(2);
      box.say("plug +0.2");
      bench.until(
          "the rig to be back",
          () ->
              bench.changes().stream()
                  .anyMatch(c -> c.state() == org.halflight.link.LinkState.BACK));
      assertThat(box.realPort()).isNotEqualTo(before);
      bench.fire("sixtieth");
      FiringResult last = bench.fire("sixtieth");
      assertThat(bench.session().isRunDone()).isTrue();
      assertThat(last.effectiveSeconds().orElseThrow())
          .isCloseTo(first.effectiveSeconds().orElseThrow(), within(2e-6));
      String sentence =
          bench.changes().stream()
              .filter(c -> c.state() == org.halflight.link.LinkState.LOST)
              .findFirst()
              .orElseThrow()
              .sentence();
      assertThat(sentence).contains("BOX-0001").contains("stopped answering").contains("kept");
    }
  }

  @Test
  void damagedLinesAndAResetCostOneFiringEach() throws Exception {
    MarkedSpeed speed = MarkedSpeed.parse("1/60");
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("damage.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.tell(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, List.of(speed), Reference.EXACT, 3)));
      box.curve("sixtieth", curve(BladeLaw.AREA_LINEAR, speed.exactSeconds(), RAMP_SECONDS));
      box.curve("second", curve(BladeLaw.AREA_LINEAR, 1, RAMP_SECONDS));
      double good = bench.fire("sixtieth").effectiveSeconds().orElseThrow();

      int soFar = bench.session().results().size();
      // The edges of the opening are flipped on their way, the closing comes whole.
      box.say("fire +0.30 sixtieth\ncorrupt +0.299 3");
      bench.until("the damaged firing", () -> bench.session().results().size() > soFar);
      assertThat(bench.session().results().get(soFar).outcome()).isEqualTo(Outcome.UNUSABLE);

      int next = bench.session().results().size();
      box.say("fire +0.05 second\nreset +0.5");
      bench.until("the firing that the reset cut", () -> bench.session().results().size() > next);
      FiringResult cut = bench.session().results().get(next);
      assertThat(cut.outcome()).isIn(Outcome.UNUSABLE, Outcome.STUCK_OPEN);
      assertThat(cut.isGood()).isFalse();

      bench.until("the board to be dark and quiet", () -> bench.session().isQuiet());
      // The thresholds of the light were put back after the reset, so the figure is the same.
      FiringResult after = bench.fire("sixtieth");
      while (after.outcome() != Outcome.TIMED) {
        after = bench.fire("sixtieth");
      }
      assertThat(after.effectiveSeconds().orElseThrow()).isCloseTo(good, within(2e-6));
      assertThat(after.key().bootCount()).isGreaterThan(cut.key().bootCount());
    }
  }

  /**
   * A firing of an effective time with ramps of one law on both sides, as a curve of straight
   * lines.
   */
  private static LightCurve curve(BladeLaw law, double effectiveSeconds, double rampSeconds)
      throws IOException {
    LightCurve ramps = ramps(law, 0, rampSeconds);
    return ramps(law, effectiveSeconds - ramps.integralSeconds(), rampSeconds);
  }

  private static LightCurve ramps(BladeLaw law, double openSeconds, double rampSeconds) {
    int n = RAMP_POINTS + 1;
    double[] seconds = new double[2 * n];
    double[] open = new double[2 * n];
    for (int i = 0; i < n; i++) {
      double part = (double) i / RAMP_POINTS;
      seconds[i] = part * rampSeconds;
      open[i] = law.openFraction(part);
      seconds[n + i] = rampSeconds + openSeconds + part * rampSeconds;
      open[n + i] = law.openFraction(1 - part);
    }
    return new LightCurve(seconds, open);
  }
}
