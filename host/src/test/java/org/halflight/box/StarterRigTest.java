package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.DecidedBy;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The starter rig's firmware in the simulator, with the lag, the noise, the bandgap and the supply
 * of an invented board. The truth is the integral of the curves that were put in. All figures are
 * simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class StarterRigTest {
  private static final List<String> SCENARIO =
      List.of(
          "light centre 120 4000",
          "lag centre 47",
          "noise centre 2 7",
          "bandgap 1060",
          BenchInABox.NAMED);
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/250");

  @TempDir private Path folder;

  @Test
  void aPhotodiodeAndAResistorTimeAShutter() throws Exception {
    Path sessionFile = folder.resolve("starter.session");
    List<FiringResult> live;
    try (BenchInABox box = BenchInABox.startStarter(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, sessionFile, List.of(box.port()))) {
      bench.connect();
      assertThat(bench.session().hasFixedLevel()).isTrue();
      assertThat(bench.news()).contains(new SessionEvent.OneLevelRig(true));
      bench.setLight();
      assertThat(bench.session().light().orElseThrow().lowCounts())
          .isCloseTo(1060 * 1024 / 5000.0, within(1.0));
      bench.handle(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, List.of(TOP), Reference.EXACT, 99)));

      error(box, bench, "s250", 0.001, 0.003, 0.012);
      error(box, bench, "s60", 0.001, 0.0157, 0.006);
      error(box, bench, "s2", 0.0015, 0.4985, 0.004);
      // The computer's supply gives way by 2 %; the board's own reference tells.
      rest(box, bench);
      box.say("supply 0.98");
      error(box, bench, "before it is read", 0.001, 0.003, 0.035);
      error(box, bench, "after it is read", 0.001, 0.003, 0.012);

      box.curve("twice", curve(0.001, 0.003, 0.030));
      rest(box, bench);
      assertThat(bench.fire("twice").outcome()).isEqualTo(Outcome.DOUBLE);
      bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.B));
      box.curve("b", curve(0.001, 1.5));
      rest(box, bench);
      assertThat(bench.fire("b").outcome()).isEqualTo(Outcome.OPENS_HOLDS_CLOSES);
      live = List.copyOf(bench.session().results());
    }
    assertThat(SessionReducer.replay(SessionFile.read(sessionFile).events()).session().results())
        .isEqualTo(live);
  }

  /** Ramps of a time, fully open for another; with a third, a second opening so long after. */
  private static LightCurve curve(double ramp, double open) {
    return new LightCurve(
        new double[] {0, ramp, ramp + open, 2 * ramp + open}, new double[] {0, 1, 1, 0});
  }

  private static LightCurve curve(double ramp, double open, double later) {
    double end = 2 * ramp + open;
    return new LightCurve(
        new double[] {
          0, ramp, ramp + open, end, end + later, end + later + ramp, end + later + 2 * ramp
        },
        new double[] {0, 1, 1, 0, 0, 1, 0});
  }

  /** The rig reads its reference behind each firing, and takes no curve meanwhile. */
  private static void rest(BenchInABox box, BoxBench bench) {
    long until = box.nanos() + 300_000_000L;
    bench.until("the reading of the reference", () -> box.nanos() > until);
  }

  private static void error(
      BenchInABox box, BoxBench bench, String name, double ramp, double open, double most)
      throws Exception {
    LightCurve curve = curve(ramp, open);
    String plain = name.replace(' ', '-');
    box.curve(plain, curve);
    rest(box, bench);
    FiringResult fired = bench.fire(plain);
    assertThat(fired.decidedBy()).isEqualTo(Optional.of(DecidedBy.CURVE));
    assertThat(fired.outcome()).isEqualTo(Outcome.TIMED);
    double error = fired.effectiveSeconds().orElseThrow() / curve.integralSeconds() - 1;
    System.out.printf(
        Locale.ROOT,
        "simulated: starter rig, %s: %+.3f %% of the integral put in%n",
        name,
        100 * error);
    assertThat(error).isCloseTo(0, within(most));
  }
}
