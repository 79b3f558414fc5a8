package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.fixtures.Seed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class AlternatingLevelsTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** The truth is the exact integral of each curve. */
  @Test
  void tenAlternatingFiringsGiveTheMeanOfTheIntegrals(@Seed(20261125) long seed) {
    Random random = new Random(seed);
    List<Firing> firings = new ArrayList<>();
    double truth = 0;
    for (int i = 0; i < 10; i++) {
      double open = 1e-3 * (1 + 0.05 * random.nextGaussian());
      LightCurve curve = CurveEdges.curve(1e-3, open, 1.2e-3, CurveEdges::areaLinear, 1);
      truth += curve.integralSeconds() / 10;
      firings.add(firing(curve, level(i)));
    }
    OptionalDouble gap = gap(firings);
    double mean = 0;
    for (int i = 0; i < 10; i++) {
      mean += timed(firings.get(i), level(i), gap).effectiveSeconds() / 10;
    }
    // Scatter of 50 us in ten firings moves the mean of means by a few microseconds only.
    assertThat(mean).as("seed 20261125").isCloseTo(truth, within(0.01 * truth));
  }

  @Test
  void withoutScatterEachFiringHasTheTimeOfTwoLevels() {
    LightCurve curve = CurveEdges.curve(1e-3, 1e-3, 1.5e-3, CurveEdges::areaLinear, 1);
    Firing low = firing(curve, Level.LOW);
    Firing high = firing(curve, Level.HIGH);
    OptionalDouble gap = gap(List.of(low, high));
    double both =
        ((Exposure.Timed)
                LeafExposureMethod.measure(
                    CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, RATE))
            .effectiveSeconds();
    assertThat(timed(low, Level.LOW, gap).effectiveSeconds()).isCloseTo(both, within(2e-7));
    assertThat(timed(high, Level.HIGH, gap).effectiveSeconds()).isCloseTo(both, within(2e-7));
  }

  @Test
  void oneLevelAloneIsNoTime() {
    Firing low = firing(CurveEdges.curve(1e-3, 1e-3, 1e-3, CurveEdges::areaLinear, 1), Level.LOW);
    assertThat(measure(low, Level.LOW, OptionalDouble.empty()))
        .isEqualTo(new Exposure.Unusable(Exposure.Reason.OTHER_LEVEL_WANTED, List.of()));
    assertThat(AlternatingLevels.gapSeconds(List.of(0.1), List.of())).isEmpty();
  }

  @Test
  void aShutterThatStaysOpenIsSeenAtEitherLevel() {
    Firing hung = new Firing(List.of(new Edge(Channel.CENTRE_LOW, true, 1000)), List.of());
    assertThat(
            AlternatingLevels.measure(
                hung, Level.HIGH, OptionalDouble.empty(), LevelPair.GAUSS, RATE, 16_001_000))
        .isEqualTo(new Exposure.StuckOpen(1, 1000));
  }

  @Test
  void bounceAtTheHighLevelIsBounceStill() {
    List<Edge> edges = new ArrayList<>();
    for (long at : new long[] {10_000, 42_000, 60_000, 63_000}) {
      edges.add(new Edge(Channel.CENTRE_LOW, edges.size() % 2 == 0, at));
    }
    Firing firing = new Firing(edges, List.of());
    Exposure.Timed timed = timed(firing, Level.HIGH, OptionalDouble.of(2e-4));
    assertThat(timed.flags()).contains(Exposure.Flag.LATE_LIGHT);
    assertThat(timed.mainSeconds()).isCloseTo(2.1e-3, within(1e-6));
    // 3000 ticks at the high level, and a gap of 3200 more at the low one.
    assertThat(timed.reboundSeconds()).isCloseTo(RATE.seconds(4600), within(1e-9));
  }

  @Test
  void aBounceAtTheLowLevelMovesAsFastAsTheBladesDo() {
    List<Edge> edges = new ArrayList<>();
    for (long at : new long[] {10_000, 42_000, 60_000, 66_200, 70_000, 73_000}) {
      edges.add(new Edge(Channel.CENTRE_LOW, edges.size() % 2 == 0, at));
    }
    Exposure.Timed timed = timed(new Firing(edges, List.of()), Level.LOW, OptionalDouble.of(2e-4));
    // The first is 3200 ticks shorter at the high level; the second does not reach it.
    assertThat(timed.reboundSeconds()).isCloseTo(RATE.seconds(4600 + 1500), within(1e-9));
  }

  private static Level level(int firing) {
    return firing % 2 == 0 ? Level.LOW : Level.HIGH;
  }

  private static Firing firing(LightCurve curve, Level level) {
    double q = level == Level.LOW ? LevelPair.GAUSS.low() : LevelPair.GAUSS.high();
    return new Firing(CurveEdges.edges(curve, Channel.CENTRE_LOW, q), List.of());
  }

  private static OptionalDouble gap(List<Firing> firings) {
    List<Double> low = new ArrayList<>();
    List<Double> high = new ArrayList<>();
    for (int i = 0; i < firings.size(); i++) {
      (level(i) == Level.LOW ? low : high)
          .add(AlternatingLevels.widthSeconds(firings.get(i), RATE).orElseThrow());
    }
    return AlternatingLevels.gapSeconds(low, high);
  }

  private static Exposure measure(Firing firing, Level level, OptionalDouble gap) {
    return AlternatingLevels.measure(firing, level, gap, LevelPair.GAUSS, RATE, firing.lastTicks());
  }

  private static Exposure.Timed timed(Firing firing, Level level, OptionalDouble gap) {
    return (Exposure.Timed) measure(firing, level, gap);
  }
}
