package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LightSentences;
import org.halflight.bench.LightSetting;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.LineReader;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The whole real path: firmware in the simulator, a pseudo-terminal, jSerialComm, the session. The
 * truth is the integral of the light curve that was put in. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class SimulatedBoardTest {
  private static final List<String> SCENARIO = List.of("light all 40 4000", BenchInABox.NAMED);
  private static final double RAMP_SECONDS = 0.001;
  private static final int RAMP_POINTS = 200;

  /** Ten bits over 5 V. */
  private static final double COUNTS_PER_MILLIVOLT = 1024 / 5000.0;

  /** The thresholds that a board starts with (docs/protocol.md). */
  private static final int START_LOW_CODE = 0x2B;

  private static final int START_HIGH_CODE = 0xA1;

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
        bench.handle(
            new SessionInput.RunBegins(
                new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, speeds, Reference.EXACT, 99)));
        for (MarkedSpeed speed : speeds) {
          bench.handle(new SessionInput.SpeedChosen(speed));
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
    SessionReducer replayed = SessionReducer.replay(SessionFile.read(sessionFile).events());
    assertThat(replayed.session().results()).isEqualTo(live);
    // The port may be opened in the middle of a line; every other line must be whole.
    assertThat(replayed.linkStatistics().bad()).isLessThanOrEqualTo(1);
  }

  @Test
  void theLightCurveComesWithTheEdgesAndAgreesWithTheIntegral() throws Exception {
    Path sessionFile = folder.resolve("curves.session");
    List<FiringResult> live;
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, sessionFile, List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      for (BladeLaw law : List.of(BladeLaw.AREA_LINEAR, BladeLaw.ROUND_RADIUS_LINEAR)) {
        for (String speed : List.of("1/500", "1/60")) {
          double seconds = MarkedSpeed.parse(speed).exactSeconds();
          LightCurve curve = curve(law, seconds, RAMP_SECONDS);
          String name = "curve" + law.name() + seconds;
          box.curve(name, curve);
          FiringKey key = bench.fire(name).key();
          CurveExposure.Measured measured = measured(bench, key);
          double error = measured.effectiveSeconds() / curve.integralSeconds() - 1;
          double power = measured.opening().orElseThrow().power();
          System.out.printf(
              Locale.ROOT,
              "simulated: light curve, %s %s: %+.3f %% of the integral, opening law p %.2f%n",
              law,
              speed,
              100 * error,
              power);
          assertThat(error).as(name).isCloseTo(0, within(seconds > 0.01 ? 0.002 : 0.005));
          assertThat(power).as(name).isCloseTo(law == BladeLaw.AREA_LINEAR ? 1 : 2, within(0.15));
          assertThat(measured.openedFully()).isTrue();
        }
      }
      for (double peak : new double[] {0.5, 0.8}) {
        LightCurve triangle =
            new LightCurve(new double[] {0, 0.0012, 0.0024}, new double[] {0, peak, 0});
        String name = "triangle" + Math.round(100 * peak);
        box.curve(name, triangle);
        FiringResult fired = bench.fire(name);
        assertThat(fired.outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
        CurveExposure.Measured measured = measured(bench, fired.key());
        assertThat(measured.openedFully()).isFalse();
        assertThat(measured.effectiveSeconds())
            .isCloseTo(triangle.integralSeconds(), within(0.01 * triangle.integralSeconds()));
      }
      live = List.copyOf(bench.session().results());
    }
    assertThat(SessionReducer.replay(SessionFile.read(sessionFile).events()).session().results())
        .isEqualTo(live);
  }

  private static CurveExposure.Measured measured(BoxBench bench, FiringKey key) {
    bench.until("the curve of " + key, () -> of(bench, key).curve().isPresent());
    return (CurveExposure.Measured) of(bench, key).curve().orElseThrow().exposure().orElseThrow();
  }

  private static FiringResult of(BoxBench bench, FiringKey key) {
    return bench.session().results().stream()
        .filter(result -> result.key().equals(key))
        .findFirst()
        .orElseThrow();
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
        Exposure.NeverFullyOpen bounds = (Exposure.NeverFullyOpen) result.exposure();
        assertThat(bounds.lowestSeconds()).isLessThan(triangle.integralSeconds());
        bounds
            .highestSeconds()
            .ifPresent(h -> assertThat(h).isGreaterThan(triangle.integralSeconds()));
      }
    }
  }

  @Test
  void thePracticeRigSetToTheSameShutterBringsTheSameTimes() throws Exception {
    Dial dial = Dial.find("leaf").orElseThrow();
    LeafShutter shutter = InventedShutters.soundLeaf(dial.speeds(), 3);
    PracticeRig practice = PracticeRig.unpaced(shutter, SensorSet.IDEAL, 3);
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("same.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      double low =
          ((LightLevels.Known) bench.session().light().orElseThrow().levels()).levels().low();
      for (MarkedSpeed speed : List.of(dial.top(), dial.speed("1/60").orElseThrow())) {
        practice.chooseSpeed(speed);
        ModelFiring.Timed model = (ModelFiring.Timed) practice.fire().orElseThrow().model();
        String name = "model" + speed.label().replace('/', '_');
        box.curve(name, model.curve());
        double onTheBoard = bench.fire(name).effectiveSeconds().orElseThrow();
        double inPractice = practised(practice, speed);
        // Both have the light within a few thousandths; at 1/500 that is worth about a microsecond.
        assertThat(onTheBoard)
            .as("%s, low level %s", speed, low)
            .isCloseTo(inPractice, within(4e-6));
      }
    }
  }

  /** The effective time of the last firing of the practice rig, through the same host code. */
  private static double practised(PracticeRig practice, MarkedSpeed speed) {
    SessionReducer fold = new SessionReducer();
    byte[] buffer = new byte[4096];
    LineReader reader = new LineReader();
    LightLevels start =
        new LightLevels(
            40 * COUNTS_PER_MILLIVOLT,
            4000 * COUNTS_PER_MILLIVOLT,
            FrontEnd.thresholdMillivolts(START_LOW_CODE) * COUNTS_PER_MILLIVOLT,
            FrontEnd.thresholdMillivolts(START_HIGH_CODE) * COUNTS_PER_MILLIVOLT);
    fold.onEvent(Marks.of(0, new SessionInput.LightSet(start)));
    for (int count = practice.read(buffer); count > 0; count = practice.read(buffer)) {
      reader.accept(buffer, count).forEach(line -> fold.onEvent(new BenchEvent.Received(0, line)));
    }
    List<FiringResult> results = fold.session().results();
    FiringResult last = results.get(results.size() - 1);
    assertThat(last.outcome()).as("practice at %s", speed).isEqualTo(Outcome.TIMED);
    return last.effectiveSeconds().orElseThrow();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "light all 40 4000|ripple 100 0.05|flickers at 100 Hz",
        "light all 40 4000|ripple 120 0.05|flickers at 120 Hz",
        "light all 40 1400|ripple 3100 0.25|within a millisecond",
        "light all 40 3000|ripple 3100 0.3|goes up and down all the time",
        "light all 40 3000|dimmer 3100 0.5|goes up and down all the time",
        "light all 40 900|ripple 0 0|too little light",
        "light all 40 4950|ripple 0 0|too bright",
        "light all 1500 4000|ripple 0 0|still sees much light"
      })
  void aBadLightIsRefusedWithASentence(String light, String ripple, String words) throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, List.of(light, ripple, BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, folder.resolve("bad.session"), List.of(box.port()))) {
      bench.connect();
      LightSetting setting = bench.tryLight();
      assertThat(setting.step()).isEqualTo(LightSetting.Step.REFUSED);
      assertThat(LightSentences.refused(setting.refusal().orElseThrow())).contains(words);
    }
  }

  @Test
  void aPulledCableKeepsWhatWasMeasuredAndTheRunGoesOnUnderAnotherName() throws Exception {
    MarkedSpeed speed = MarkedSpeed.parse("1/60");
    try (BenchInABox box = BenchInABox.startAsInLife(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("cable.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.handle(
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
      assertThat(byEdges(last)).isCloseTo(byEdges(first), within(2e-6));
      String sentence =
          bench.changes().stream()
              .filter(c -> c.state() == org.halflight.link.LinkState.LOST)
              .findFirst()
              .orElseThrow()
              .sentence();
      assertThat(sentence).contains("BOX-0001").contains("no longer answers").contains("kept");
    }
  }

  @Test
  void damagedLinesAndAResetCostOneFiringEach() throws Exception {
    MarkedSpeed speed = MarkedSpeed.parse("1/60");
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("damage.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.handle(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, List.of(speed), Reference.EXACT, 3)));
      box.curve("sixtieth", curve(BladeLaw.AREA_LINEAR, speed.exactSeconds(), RAMP_SECONDS));
      box.curve("second", curve(BladeLaw.AREA_LINEAR, 1, RAMP_SECONDS));
      double good = byEdges(bench.fire("sixtieth"));

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

      bench.until(
          "the thresholds to settle where they were, and the board to be dark and quiet",
          () -> !bench.driver().light().isRestoring() && bench.session().isQuiet());
      // The thresholds of the light were put back after the reset, so the figure is the same.
      // While they settled the comparators may have switched: an event of its own.
      FiringResult after = bench.fire("sixtieth");
      for (int more = 0; more < 2 && after.outcome() != Outcome.TIMED; more++) {
        after = bench.fire("sixtieth");
      }
      assertThat(after.outcome()).isEqualTo(Outcome.TIMED);
      assertThat(byEdges(after)).isCloseTo(good, within(2e-6));
      assertThat(after.key().bootCount()).isGreaterThan(cut.key().bootCount());
    }
  }

  /**
   * The time of a firing by its edges alone: a light curve moves it by up to 2 us, by where its
   * samples happen to fall.
   */
  private static double byEdges(FiringResult fired) {
    return ((Exposure.Timed) fired.exposure()).effectiveSeconds();
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
