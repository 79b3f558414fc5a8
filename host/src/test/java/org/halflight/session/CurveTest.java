package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.halflight.session.InventedBench.DARK;
import static org.halflight.session.InventedBench.FULL;
import static org.halflight.session.InventedBench.RATE;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S60;

import java.util.ArrayList;
import java.util.List;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.EdgesAndCurve;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The light curve finds its firing, whenever it comes. */
class CurveTest {
  private static final int PERIOD = 256;

  private final InventedBench bench = new InventedBench();

  @BeforeEach
  void begin() {
    bench.begin(Phase.ADJUSTING, 99, S125);
  }

  /** Straight ramps as the bench makes them, 40 readings of dark before and after. */
  private static SampledLight curve(
      double startSeconds, double effectiveSeconds, double rampSeconds, double peak) {
    long start = RATE.ticks(startSeconds);
    double end = effectiveSeconds + rampSeconds;
    List<Integer> values = new ArrayList<>();
    int count = (int) (RATE.ticks(end) / PERIOD) + 80;
    for (int i = 0; i < count; i++) {
      double since = RATE.seconds((long) (i - 40) * PERIOD);
      double open = Math.min(since, end - since) / rampSeconds;
      double counts = DARK + (FULL - DARK) * Math.max(0, Math.min(peak, open));
      values.add((int) (counts / 4));
    }
    return new SampledLight(
        List.of(new Part(Kind.OPENING, start - 40L * PERIOD, PERIOD, values, false)), false);
  }

  @Test
  void aCurveThatComesAfterItsFiringIsAddedToIt() {
    double start = bench.now;
    bench.fire(0.008);
    FiringResult before = bench.result(1);
    assertThat(before.curve()).isEmpty();
    SampledLight sampled = curve(start, 0.008, 0.001, 1);
    bench.handle(new SessionInput.CurveAt(sampled));
    FiringResult after = bench.result(1);
    assertThat(after.sampledLight()).contains(sampled);
    Measured measured = (Measured) after.curveExposure().get();
    assertThat(measured.effectiveSeconds()).isCloseTo(0.008, within(measured.toleranceSeconds()));
    assertThat(after.decidedBy()).contains(DecidedBy.EDGES_CORRECTED);
    assertThat(after.effectiveSeconds().getAsDouble()).isCloseTo(0.008, within(5e-6));
    // The edges' own figure stays as it was.
    assertThat(after.exposure()).isEqualTo(before.exposure());
    assertThat(bench.news(SessionEvent.CurveAdded.class)).hasSize(1);
    assertThat(bench.news(SessionEvent.Changed.class)).isEmpty();
  }

  @Test
  void aCurveThatComesBeforeTheQuietTimeWaitsForItsFiring() {
    double start = bench.now;
    bench.light(0.008, 0.001);
    SampledLight sampled = curve(start, 0.008, 0.001, 1);
    bench.handle(new SessionInput.CurveAt(sampled));
    assertThat(bench.session.results()).isEmpty();
    bench.quiet();
    assertThat(bench.result(1).sampledLight()).contains(sampled);
    assertThat(bench.news(SessionEvent.CurveAdded.class)).isEmpty();
  }

  @Test
  void eachFiringGetsItsOwnAndABounceNone() {
    double first = bench.now;
    bench.fire(0.008);
    double second = bench.now;
    bench.light(0.006, 0.001);
    double bounce = bench.now + 0.002;
    bench.now = bounce;
    bench.light(0.0005, 0.0004);
    bench.quiet();
    bench.handle(new SessionInput.CurveAt(curve(bounce, 0.0005, 0.0004, 1)));
    assertThat(bench.session.results()).allMatch(r -> r.curve().isEmpty());
    SampledLight later = curve(second, 0.006, 0.001, 1);
    SampledLight earlier = curve(first, 0.008, 0.001, 1);
    bench.handle(new SessionInput.CurveAt(later));
    bench.handle(new SessionInput.CurveAt(earlier));
    assertThat(bench.result(1).sampledLight()).contains(earlier);
    assertThat(bench.result(2).sampledLight()).contains(later);
  }

  @Test
  void leavesThatNeverOpenFullyGetTheirTimeFromTheCurve() {
    // A triangle up to 0.6 of full light: the high level is not reached, and 0.6 * 0.6 ramps is its
    // integral.
    double start = bench.now;
    bench.dimLight(0.001);
    bench.quiet();
    FiringResult before = bench.result(1);
    assertThat(before.outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
    double rise = 0.6 * 0.002;
    bench.handle(new SessionInput.CurveAt(curve(start, 2 * rise - 0.002, 0.002, 0.6)));
    Exposure.NeverFullyOpen never = (Exposure.NeverFullyOpen) bench.result(1).exposure();
    assertThat(never.effectiveSeconds().getAsDouble()).isCloseTo(0.6 * 0.6 * 0.002, within(6e-6));
    assertThat(((Measured) bench.result(1).curveExposure().get()).openedFully()).isFalse();
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
  }

  @Test
  void leavesThatStopShortAboveTheHighLevelAreFlagged() {
    double start = bench.now;
    bench.fire(0.008);
    bench.handle(new SessionInput.CurveAt(curve(start, 0.008, 0.001, 0.9)));
    Exposure.Timed timed = (Exposure.Timed) bench.result(1).exposure();
    assertThat(timed.flags()).containsExactly(Exposure.Flag.CURVE_BELOW_FULL);
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.FULL_LIGHT_AGAIN);
  }

  /**
   * Blades that dwell at 0.85 of full light and let as much through as 1/125 should: the two levels
   * take it for 0.21 stop slow.
   */
  private void dwell() {
    double start = bench.now;
    bench.light(DWELLING_BY_EDGES, 0.001);
    bench.quiet();
    bench.handle(new SessionInput.CurveAt(curve(start, DWELLING_BY_EDGES, 0.001, 0.85)));
  }

  private static final double DWELLING_BY_EDGES = 1 / 128.0 / 0.85 + 0.85e-3 - 1e-3;

  @Test
  void bladesThatDwellHaveNoTimeUntilFullLightIsMeasuredAgain() {
    dwell();
    FiringResult waits = bench.result(1);
    assertThat(waits.edgesSeconds().getAsDouble()).isCloseTo(DWELLING_BY_EDGES, within(1e-6));
    assertThat(waits.effectiveSeconds()).isEmpty();
    assertThat(waits.errorStops()).isEmpty();
    assertThat(waits.isGood()).isFalse();
    assertThat(waits.answersTheQuestion()).isTrue();
    assertThat(bench.session.isFullLightWanted()).isTrue();
  }

  private void isTimedByTheCurve(FiringResult result) {
    assertThat(result.decidedBy()).contains(DecidedBy.CURVE);
    assertThat(result.errorStops().getAsDouble()).isCloseTo(0, within(0.01));
    assertThat(result.isGood()).isTrue();
    assertThat(bench.session.isFullLightWanted()).isFalse();
  }

  @Test
  void aLaterPlateauThatIsFullLetsTheCurveDecide() {
    dwell();
    dwell();
    bench.fireWithPlateau(FULL - 2);
    isTimedByTheCurve(bench.result(1));
    isTimedByTheCurve(bench.result(2));
    assertThat(bench.news(SessionEvent.Changed.class)).hasSize(2);
  }

  @Test
  void aPlateauThatIsNotFullLetsNothingDecide() {
    dwell();
    bench.fireWithPlateau(DARK + 0.97 * (FULL - DARK));
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.FULL_LIGHT_AGAIN);
    assertThat(bench.result(1).curve().get().fullLightAfter().getAsDouble())
        .isCloseTo(0.97, within(0.001));
    bench.fireWithPlateau(FULL);
    isTimedByTheCurve(bench.result(1));
  }

  @Test
  void fullLightReadAgainLetsTheCurveDecide() {
    dwell();
    bench.handle(
        new SessionInput.LightRead(
            LightReading.of(
                LightReading.What.FULL, "", false, FULL - 1, 0.3, 1000, RATE.ticks(bench.now))));
    isTimedByTheCurve(bench.result(1));
    assertThat(bench.news(SessionEvent.FullLightRead.class)).hasSize(1);
    // It is no test of the light, and no record of one.
    assertThat(bench.session.readings()).isEmpty();
  }

  @Test
  void fullLightReadAgainAndFoundOffIsSaid() {
    bench.fire(0.008);
    bench.handle(
        new SessionInput.LightRead(
            LightReading.of(LightReading.What.FULL, "", false, FULL / 2, 0.3, 1000, 1)));
    assertThat(bench.news(SessionEvent.PlateauOff.class)).hasSize(1);
    assertThat(bench.result(1).notes().lightDoubtful()).isTrue();
  }

  @Test
  void lightThatIsSetAgainAndTheSameLetsTheCurveDecide() {
    dwell();
    bench.setLight();
    isTimedByTheCurve(bench.result(1));
  }

  @Test
  void lightThatIsSetToAnotherLetsNothingDecideEver() {
    dwell();
    double span = 0.9 * (FULL - DARK);
    bench.handle(
        new SessionInput.LightSet(
            new LightLevels(
                DARK,
                DARK + span,
                DARK + span * LevelPair.GAUSS.low(),
                DARK + span * LevelPair.GAUSS.high())));
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.FULL_LIGHT_AGAIN);
    bench.fireWithPlateau(DARK + span);
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.FULL_LIGHT_AGAIN);
  }

  @Test
  void edgesAndCurveThatDoNotSeeTheSameLightGiveNoTime() {
    double start = bench.now;
    bench.fire(0.008);
    bench.handle(new SessionInput.CurveAt(curve(start, 0.0085, 0.001, 1)));
    FiringResult result = bench.result(1);
    assertThat(result.decidedBy()).contains(DecidedBy.CHECK_RIG);
    assertThat(result.decided().get().apartSeconds().getAsDouble())
        .isCloseTo(0.0005, within(10e-6));
    assertThat(result.effectiveSeconds()).isEmpty();
    assertThat(((Exposure.Timed) result.exposure()).flags())
        .containsExactly(Exposure.Flag.WIDTHS_APART);
    bench.fireWithPlateau(FULL);
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.CHECK_RIG);
  }

  @Test
  void bladesThatNeverOpenFullyAreTimedByTheCurveToo() {
    double start = bench.now;
    bench.dimLight(0.001);
    bench.quiet();
    double rise = 0.6 * 0.002;
    // The width above the low level is that of the edges.
    double low = 2 * (0.6 - LevelPair.GAUSS.low()) * 0.002;
    bench.handle(new SessionInput.CurveAt(curve(start, 2 * rise - 0.002, 0.002, 0.6)));
    assertThat(Math.abs(low - 0.001)).isGreaterThan(EdgesAndCurve.LEAST_APART_SECONDS);
    assertThat(bench.result(1).decidedBy()).contains(DecidedBy.CHECK_RIG);

    double second = bench.now;
    bench.now = second + LevelPair.GAUSS.low() * 0.002;
    bench.dimLight(low);
    bench.quiet();
    bench.handle(new SessionInput.CurveAt(curve(second, 2 * rise - 0.002, 0.002, 0.6)));
    assertThat(bench.result(2).decidedBy()).contains(DecidedBy.FULL_LIGHT_AGAIN);
    bench.fireWithPlateau(FULL);
    FiringResult timed = bench.result(2);
    assertThat(timed.outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
    assertThat(timed.decidedBy()).contains(DecidedBy.CURVE);
    assertThat(timed.effectiveSeconds().getAsDouble()).isCloseTo(0.6 * 0.6 * 0.002, within(6e-6));
    assertThat(timed.isGood()).isTrue();
  }

  @Test
  void withoutASetLightTheCurveIsKeptRaw() {
    bench.handle(new SessionInput.LightForgotten());
    double start = bench.now;
    bench.fire(0.008);
    bench.handle(new SessionInput.CurveAt(curve(start, 0.008, 0.001, 1)));
    assertThat(bench.result(1).sampledLight()).isPresent();
    assertThat(bench.result(1).curveExposure()).isEmpty();
  }

  @Test
  void anotherStartOfTheBoardGetsNoCurveOfBefore() {
    double start = bench.now;
    bench.light(0.008, 0.001);
    bench.handle(new SessionInput.CurveAt(curve(start, 0.008, 0.001, 1)));
    bench.handle(new SessionInput.RigIs("R-0001", 8, BoardTraits.USUAL, ""));
    double again = bench.now;
    bench.fire(InventedBench.seconds(S60, 0));
    assertThat(bench.session.results().get(bench.session.results().size() - 1).curve()).isEmpty();
    assertThat(again).isGreaterThan(start);
  }

  @Test
  void theSameInputsBringTheSameCurves() {
    double start = bench.now;
    bench.fire(0.008);
    bench.handle(new SessionInput.CurveAt(curve(start, 0.008, 0.001, 1)));
    Session again = new Session();
    bench.inputs.forEach(again::handle);
    assertThat(again.results()).isEqualTo(bench.session.results());
    assertThat(again.results().get(0).curveExposure()).get().isInstanceOf(CurveExposure.class);
  }
}
