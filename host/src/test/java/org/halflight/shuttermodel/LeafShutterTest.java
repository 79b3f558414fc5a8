package org.halflight.shuttermodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.halflight.exposure.LevelPair;
import org.halflight.fixtures.Seeds;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LeafShutterTest {
  private static final long SEED = Seeds.usually(4711);
  private static final SensorBar BAR = SensorBar.usual(36);
  private static final MarkedSpeed FAST = new MarkedSpeed("1/500", 1.0 / 500, 1.0 / 512);

  static Stream<LeafShutter> invented() {
    List<MarkedSpeed> dial = InventedShutters.dial();
    return Stream.of(
        InventedShutters.soundLeaf(dial, SEED),
        InventedShutters.dirtySlowTrain(dial, SEED),
        InventedShutters.cleanedSlowTrain(dial, SEED),
        InventedShutters.allSlow(dial, SEED),
        InventedShutters.neverFullyOpen(dial, SEED));
  }

  private static LeafShutter of(BladeStroke stroke, SpeedBehaviour behaviour, Bounce bounce) {
    return new LeafShutter(
        "test", stroke, Map.of(FAST, behaviour), bounce, ReleaseTiming.INVENTED, SEED);
  }

  private static BladeStroke strokes(OpeningLaw law, double millis) {
    return new BladeStroke(law, millis, law, millis);
  }

  @ParameterizedTest
  @MethodSource("invented")
  void integralOfEveryCurveIsTheStatedTruth(LeafShutter shutter) {
    int timedFirings = 0;
    for (MarkedSpeed speed : shutter.dial()) {
      for (int number = 1; number <= 30; number++) {
        if (shutter.firing(speed, number) instanceof ModelFiring.Timed timed) {
          timedFirings++;
          assertThat(timed.curve().integralSeconds())
              .as("%s, %s, firing %d", shutter.name(), speed, number)
              .isCloseTo(
                  timed.effectiveSeconds() * (1 + timed.bounceShare()),
                  within(1e-12 * timed.effectiveSeconds()));
          assertThat(integralUntil(timed.curve(), timed.darkSeconds()))
              .isCloseTo(timed.effectiveSeconds(), within(1e-12 * timed.effectiveSeconds()));
          assertThat(timed.curve().peak()).isEqualTo(timed.peak());
        }
      }
    }
    assertThat(timedFirings).isGreaterThan(250);
  }

  @Test
  void withoutScatterTheEffectiveTimeIsTheExactTimeAndItsOffset() {
    LeafShutter shutter =
        of(strokes(BladeLaw.AREA_LINEAR, 0.5), SpeedBehaviour.of(0.5, 0), Bounce.NONE);
    ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, 3);
    assertThat(Stops.between(timed.curve().integralSeconds(), FAST.exactSeconds()))
        .isCloseTo(0.5, within(1e-12));
    // Area linear: half of each stroke counts, so the total time is longer by half of both.
    assertThat(timed.curve().totalSeconds())
        .isCloseTo(timed.effectiveSeconds() + 0.5e-3, within(1e-12));
    assertThat(timed.openedFully()).isTrue();
  }

  /**
   * The two-level rule on whole curves is short or long by the law's error times both strokes, as
   * the table of laws says for one stroke.
   */
  @ParameterizedTest
  @CsvSource({
    "AREA_LINEAR, 0",
    "ROUND_RADIUS_LINEAR, 0.00722",
    "FIVE_BLADES_CONSTANT, 0.00329",
    "FIVE_BLADES_ACCELERATING, 0.00805",
    "FIVE_BLADES_BRAKING, -0.00444"
  })
  void twoGaussLevelsMissByTheLawsErrorTimesBothStrokes(BladeLaw law, double errorShare) {
    LeafShutter shutter = of(strokes(law, 0.8), SpeedBehaviour.of(0, 0), Bounce.NONE);
    ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, 1);
    LightCurve curve = timed.curve();
    double measured =
        (curve.secondsAbove(LevelPair.GAUSS.low()) + curve.secondsAbove(LevelPair.GAUSS.high()))
            / 2;
    assertThat(measured - timed.effectiveSeconds()).isCloseTo(-errorShare * 1.6e-3, within(3e-8));
  }

  @Test
  void aFiringTooShortForItsBladesPeaksBelowFullLight() {
    LeafShutter shutter =
        of(strokes(BladeLaw.ROUND_RADIUS_LINEAR, 3), SpeedBehaviour.of(0, 0), Bounce.NONE);
    ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, 1);
    assertThat(timed.openedFully()).isFalse();
    assertThat(timed.openSeconds()).isEqualTo(timed.closingSeconds());
    // By hand: radius s grows to x, effective time 2 T x^3 / 3; the chords of 128 lines add 3e-5.
    double way = Math.cbrt(1.5 * FAST.exactSeconds() / 3e-3);
    assertThat(timed.peak()).isCloseTo(way * way, within(1e-4));
  }

  @Test
  void bladesThatStopShortKeepTheEffectiveTimeWithLessLight() {
    LeafShutter shutter =
        of(
            strokes(BladeLaw.FIVE_BLADES_CONSTANT, 0.5),
            SpeedBehaviour.of(0, 0).withPeak(0.7),
            Bounce.NONE);
    ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, 1);
    assertThat(timed.peak()).isCloseTo(0.7, within(1e-12));
    assertThat(timed.effectiveSeconds()).isEqualTo(FAST.exactSeconds());
    assertThat(timed.closingSeconds()).isGreaterThan(timed.openSeconds());
  }

  @Test
  void bounceIsTheStatedShareOfTheFastestSpeedAndComesWhenItShould() {
    LeafShutter shutter =
        of(
            strokes(BladeLaw.FIVE_BLADES_BRAKING, 0.5),
            SpeedBehaviour.of(0, 0),
            new Bounce(0.03, 4, 1.2));
    ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, 1);
    assertThat(timed.bounceShare()).isCloseTo(0.03, within(1e-12));
    double pulse = timed.darkSeconds() + 4e-3;
    assertThat(timed.curve().at(pulse)).isZero();
    assertThat(timed.curve().at(pulse + 0.6e-3)).isPositive();
    assertThat(timed.curve().at(pulse + 1.2e-3)).isZero();
    assertThatThrownBy(
            () ->
                of(
                    strokes(BladeLaw.AREA_LINEAR, 0.5),
                    SpeedBehaviour.of(0, 0),
                    new Bounce(0.9, 1, 0.1)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void scatterOfTwoThousandFiringsHasItsMeanAndStandardDeviation() {
    int count = 2000;
    double offset = 0.7;
    double scatter = 0.12;
    LeafShutter shutter =
        of(
            strokes(BladeLaw.FIVE_BLADES_ACCELERATING, 0.3),
            SpeedBehaviour.of(offset, scatter),
            Bounce.NONE);
    DescriptiveStatistics stops = new DescriptiveStatistics();
    for (int number = 1; number <= count; number++) {
      ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, number);
      stops.addValue(Stops.between(timed.curve().integralSeconds(), FAST.exactSeconds()));
    }
    assertThat(stops.getMean())
        .as("seed %d", SEED)
        .isCloseTo(offset, within(4 * scatter / Math.sqrt(count)));
    // Standard error of a standard deviation of normal values: sigma / sqrt(2 (n - 1)).
    assertThat(stops.getStandardDeviation())
        .as("seed %d", SEED)
        .isCloseTo(scatter, within(4 * scatter / Math.sqrt(2 * (count - 1))));
    // Excess kurtosis 0 with standard error sqrt(24 / n), skewness 0 with sqrt(6 / n).
    assertThat(stops.getKurtosis()).isCloseTo(0, within(4 * Math.sqrt(24.0 / count)));
    assertThat(stops.getSkewness()).isCloseTo(0, within(4 * Math.sqrt(6.0 / count)));
  }

  @Test
  void creepGrowsByFiringAndEndsAndTheFirstAfterRestLags() {
    LeafShutter shutter =
        of(
            strokes(BladeLaw.AREA_LINEAR, 0.5),
            SpeedBehaviour.of(0, 0).withCreep(0.02).withAfterRest(0.3),
            Bounce.NONE);
    List<Double> stops = new ArrayList<>();
    for (int number : new int[] {1, 2, 11, 20, 21, 50}) {
      ModelFiring.Timed timed = (ModelFiring.Timed) shutter.firing(FAST, number);
      stops.add(Stops.between(timed.effectiveSeconds(), FAST.exactSeconds()));
    }
    assertThat(stops)
        .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-12 ? 0 : Double.compare(a, b))
        .containsExactly(0.3, 0.02, 0.2, 0.38, 0.38, 0.38);
  }

  @Test
  void hangingAndStayingShutComeAsOftenAsTheirChances() {
    int count = 2000;
    LeafShutter shutter =
        of(
            strokes(BladeLaw.AREA_LINEAR, 0.5),
            SpeedBehaviour.of(0, 0.1).withChances(0.2, 0.1),
            Bounce.NONE);
    int hung = 0;
    int shut = 0;
    for (int number = 1; number <= count; number++) {
      ModelFiring firing = shutter.firing(FAST, number);
      hung += firing instanceof ModelFiring.StuckOpen ? 1 : 0;
      shut += firing instanceof ModelFiring.DidNotOpen ? 1 : 0;
    }
    assertThat(hung / (double) count)
        .as("seed %d", SEED)
        .isCloseTo(0.2, within(4 * Math.sqrt(0.2 * 0.8 / count)));
    assertThat(shut / (double) count)
        .as("seed %d", SEED)
        .isCloseTo(0.1, within(4 * Math.sqrt(0.1 * 0.9 / count)));
  }

  @Test
  void theSameTurnGivesTheSameLightAndOtherSeedsOther() {
    List<MarkedSpeed> dial = InventedShutters.dial();
    LightCurve once = curve(InventedShutters.soundLeaf(dial, 1), FAST, 5);
    LightCurve again = curve(InventedShutters.soundLeaf(dial, 1), FAST, 5);
    assertThat(again.seconds()).isEqualTo(once.seconds());
    assertThat(again.open()).isEqualTo(once.open());
    assertThat(curve(InventedShutters.soundLeaf(dial, 2), FAST, 5).integralSeconds())
        .isNotEqualTo(once.integralSeconds());
    assertThat(curve(InventedShutters.soundLeaf(dial, 1), FAST, 6).integralSeconds())
        .isNotEqualTo(once.integralSeconds());
  }

  @Test
  void heldOpenTheBladesReachFullLightAndComeBackToDark() {
    LeafShutter shutter = InventedShutters.neverFullyOpen(InventedShutters.dial(), SEED);
    assertThat(shutter.opening(BAR).centre().endOpen()).isEqualTo(1);
    assertThat(shutter.closing(BAR).centre().at(0)).isEqualTo(1);
    assertThat(shutter.closing(BAR).centre().endOpen()).isZero();
    assertThat(shutter.closing(BAR).centre().endSeconds()).isCloseTo(3.6e-3, within(1e-12));
  }

  /** What each invented shutter is there to show. */
  @Test
  void inventedShuttersShowWhatTheyAreFor() {
    List<MarkedSpeed> dial = InventedShutters.dial();
    LeafShutter dirty = InventedShutters.dirtySlowTrain(dial, SEED);
    LeafShutter sound = InventedShutters.soundLeaf(dial, SEED);
    for (MarkedSpeed speed : dial) {
      boolean train = speed.exactSeconds() >= 1.0 / 16;
      assertThat(dirty.at(speed).offsetStops() > 0.45).as(speed.label()).isEqualTo(train);
      if (!train) {
        assertThat(dirty.at(speed)).isEqualTo(sound.at(speed));
      }
    }
    LeafShutter never = InventedShutters.neverFullyOpen(dial, SEED);
    List<Double> peaks = new ArrayList<>();
    for (int number = 1; number <= 40; number++) {
      if (never.firing(FAST, number) instanceof ModelFiring.Timed timed) {
        peaks.add(timed.peak());
      }
    }
    assertThat(peaks).hasSizeGreaterThan(30).allMatch(peak -> peak > 0.4 && peak < 0.75);
    MarkedSpeed slower = dial.get(7);
    assertThat(timed(never, slower, 2).openedFully()).isTrue();
    assertThat(timed(sound, FAST, 2).openedFully()).isTrue();
    assertThatThrownBy(() -> sound.at(new MarkedSpeed("1/1000", 1e-3, 1.0 / 1024)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static ModelFiring.Timed timed(LeafShutter shutter, MarkedSpeed speed, int number) {
    return (ModelFiring.Timed) shutter.firing(speed, number);
  }

  private static LightCurve curve(LeafShutter shutter, MarkedSpeed speed, int number) {
    return timed(shutter, speed, number).curve();
  }

  private static double integralUntil(LightCurve curve, double untilSeconds) {
    double[] seconds = curve.seconds();
    double[] open = curve.open();
    double sum = 0;
    for (int i = 1; i < seconds.length && seconds[i] <= untilSeconds; i++) {
      sum += (open[i] + open[i - 1]) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return sum;
  }
}
