package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.StatUtils;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.Exposure.Reason;
import org.halflight.exposure.Exposure.StuckOpen;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.exposure.Exposure.Unusable;
import org.halflight.fixtures.Seed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeafExposureMethodTest {
  private static final long MS = 16_000;
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final List<Edge> edges = new ArrayList<>();

  private void pulse(Channel channel, long startTicks, long endTicks) {
    edges.add(new Edge(channel, true, startTicks));
    edges.add(new Edge(channel, false, endTicks));
  }

  /** Ramps of 1 ms with even area, 9 ms open: 10 ms effective, 11 ms in total. */
  private void main() {
    pulse(Channel.CENTRE_LOW, 3381, 11 * MS - 3381);
    pulse(Channel.CENTRE_HIGH, 12619, 11 * MS - 12619);
  }

  private Firing firing(Firing.Damage... damage) {
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of(damage));
  }

  private Exposure measure() {
    return LeafExposureMethod.measure(firing(), LevelPair.GAUSS, RATE);
  }

  private Reason reason() {
    return ((Unusable) measure()).reason();
  }

  @Test
  void aPlainExposure() {
    main();
    Timed timed = (Timed) measure();
    assertThat(timed.effectiveSeconds()).isCloseTo(10e-3, within(62.5e-9));
    assertThat(timed.blades().orElseThrow().totalSeconds().areaLinear())
        .isCloseTo(11e-3, within(0.2e-6));
    assertThat(timed.blades().orElseThrow().openingSeconds().areaLinear())
        .isCloseTo(1e-3, within(0.2e-6));
    assertThat(timed.blades().orElseThrow().closingSeconds().areaLinear())
        .isCloseTo(1e-3, within(0.2e-6));
    assertThat(timed.blades().orElseThrow().fullyOpenSeconds().areaLinear())
        .isCloseTo(9e-3, within(0.2e-6));
    assertThat(timed.blades().orElseThrow().efficiency().areaLinear())
        .isCloseTo(10 / 11.0, within(1e-4));
    assertThat(timed.blades().orElseThrow().totalSeconds().radiusLinear())
        .isGreaterThan(timed.blades().orElseThrow().totalSeconds().areaLinear());
    assertThat(timed.flags()).isEmpty();
    assertThat(timed.lateLightShare()).isZero();
    assertThat(timed.crossings())
        .isEqualTo(new Crossings(3381, 12619, 11 * MS - 12619, 11 * MS - 3381));
  }

  @Test
  void aReboundIsExposureAndShownApart() {
    main();
    // A triangle of 1 ms base that peaks at half light: 0.25 ms, by two levels 0.289 ms.
    pulse(Channel.CENTRE_LOW, 12 * MS + 3381, 13 * MS - 3381);
    Timed timed = (Timed) measure();
    assertThat(timed.effectiveSeconds()).isCloseTo(10.289e-3, within(1e-6));
    assertThat(timed.mainSeconds()).isCloseTo(10e-3, within(62.5e-9));
    assertThat(timed.reboundSeconds()).isCloseTo(0.289e-3, within(1e-6));
    assertThat(timed.flags()).containsExactlyInAnyOrder(Flag.LATE_LIGHT, Flag.LOW_LEVEL_ONLY);
    assertThat(timed.lateLightShare()).isCloseTo(0.0289, within(1e-4));
    assertThat(timed.earlyLightShare()).isZero();
    assertThat(timed.outsideBoundSeconds()).isCloseTo(0.4 * 0.289e-3, within(1e-6));
    // What is about the blades stays of the main opening.
    assertThat(timed.blades().orElseThrow().efficiency().areaLinear())
        .isCloseTo(10 / 11.0, within(1e-4));
  }

  /**
   * What the rule makes of a triangle of light that peaks at {@code h} and has a base of 1 s: it is
   * above {@code q} for {@code 1 - q / h}, so the rule gives the mean of that at its two levels,
   * and the light is {@code h / 2}.
   */
  @ParameterizedTest
  @CsvSource({"0.25, 0.62", "0.30, 0.99", "0.40, 1.18", "0.79, 0.93", "1.00, 1.00"})
  void trianglesOfLightAreWeighedSoWell(double peak, double expected) {
    main();
    double base = 4e-3;
    long from = 13 * MS;
    for (Channel channel : new Channel[] {Channel.CENTRE_LOW, Channel.CENTRE_HIGH}) {
      double level = channel == Channel.CENTRE_LOW ? LevelPair.GAUSS.low() : LevelPair.GAUSS.high();
      if (level < peak) {
        long into = RATE.ticks(base / 2 * level / peak);
        pulse(channel, from + into, from + RATE.ticks(base) - into);
      }
    }
    Timed timed = (Timed) measure();
    double truth = base * peak / 2;
    double q1 = LevelPair.GAUSS.low();
    double q2 = LevelPair.GAUSS.high();
    double byRule = base * ((1 - q1 / peak) + Math.max(0, 1 - q2 / peak)) / 2;
    assertThat(byRule / truth).isCloseTo(expected, within(5e-3));
    assertThat(timed.reboundSeconds()).isCloseTo(byRule, within(0.2e-6));
    assertThat(Math.abs(byRule - truth)).isLessThan(timed.outsideBoundSeconds() / (1 - 0.4));
    assertThat(timed.flags().contains(Flag.LOW_LEVEL_ONLY)).isEqualTo(peak < q2);
    assertThat(timed.isDouble()).isFalse();
  }

  @Test
  void lightThatBeginsMoreThanTenMillisecondsAfterTheClosingIsAnotherOpening() {
    main();
    long closed = 11 * MS - 3381;
    pulse(Channel.CENTRE_LOW, closed + 10 * MS, closed + 14 * MS);
    assertThat(((Timed) measure()).isDouble()).isFalse();
    edges.subList(edges.size() - 2, edges.size()).clear();
    pulse(Channel.CENTRE_LOW, closed + 10 * MS + 1, closed + 14 * MS);
    Timed timed = (Timed) measure();
    assertThat(timed.isDouble()).isTrue();
    assertThat(timed.effectiveSeconds())
        .isCloseTo(timed.mainSeconds() + timed.reboundSeconds(), within(1e-12));
  }

  @Test
  void lightMoreThanTenMillisecondsBeforeTheOpeningIsAnotherOpening() {
    pulse(Channel.CENTRE_LOW, 0, MS);
    long later = 10 * MS;
    pulse(Channel.CENTRE_LOW, later, later + 5 * MS);
    pulse(Channel.CENTRE_HIGH, later + 200, later + 5 * MS - 200);
    assertThat(((Timed) measure()).isDouble()).isFalse();
    edges.clear();
    pulse(Channel.CENTRE_LOW, 0, MS);
    pulse(Channel.CENTRE_LOW, later + 1, later + 5 * MS);
    pulse(Channel.CENTRE_HIGH, later + 200, later + 5 * MS - 200);
    assertThat(((Timed) measure()).isDouble()).isTrue();
  }

  @Test
  void aSpeckFarOffIsNoSecondOpening() {
    main();
    pulse(Channel.CENTRE_LOW, 100 * MS, 100 * MS + 790);
    assertThat(((Timed) measure()).isDouble()).isFalse();
    pulse(Channel.CENTRE_LOW, 120 * MS, 120 * MS + 10);
    assertThat(((Timed) measure()).isDouble()).isTrue();
  }

  @Test
  void theBoundsOfBladesThatNeverOpenFullyHoldTheirReboundToo() {
    // A triangle of 4 ms base that peaks at 0.9: 1.8 ms; then one of 2 ms base up to a half.
    pulse(Channel.CENTRE_LOW, 7512, 64_000 - 7512);
    pulse(Channel.CENTRE_HIGH, 28_043, 64_000 - 28_043);
    Exposure.NeverFullyOpen alone = (Exposure.NeverFullyOpen) measure();
    pulse(Channel.CENTRE_LOW, 80_000 + 6762, 112_000 - 6762);
    Exposure.NeverFullyOpen both = (Exposure.NeverFullyOpen) measure();

    double truth = 1.8e-3 + 0.5e-3;
    assertThat(both.lowestSeconds()).isGreaterThan(alone.lowestSeconds()).isLessThan(truth);
    assertThat(both.highestSeconds().getAsDouble())
        .isGreaterThan(alone.highestSeconds().getAsDouble())
        .isGreaterThan(truth);
  }

  @Test
  void aSpeckOfLateLightIsGivenButNotFlagged() {
    main();
    pulse(Channel.CENTRE_LOW, 12 * MS, 12 * MS + 80);
    Timed timed = (Timed) measure();
    assertThat(timed.lateLightShare()).isBetween(1e-5, 1e-3);
    assertThat(timed.flags()).isEmpty();
  }

  @Test
  void lightBeforeTheMainOpeningIsEarly() {
    pulse(Channel.CENTRE_LOW, 100, 1000);
    pulse(Channel.CENTRE_HIGH, 300, 800);
    long later = 10 * MS;
    pulse(Channel.CENTRE_LOW, later, later + 5 * MS);
    pulse(Channel.CENTRE_HIGH, later + 200, later + 5 * MS - 200);
    Timed timed = (Timed) measure();
    assertThat(timed.flags()).containsExactly(Flag.EARLY_LIGHT);
    assertThat(timed.widthLowSeconds()).isEqualTo(5e-3);
    // Mean of 900 and 500 ticks, moved by no level: the levels are the nodes.
    assertThat(timed.earlySeconds()).isCloseTo(RATE.seconds(700), within(1e-9));
    assertThat(timed.effectiveSeconds())
        .isCloseTo(timed.mainSeconds() + RATE.seconds(700), within(1e-9));
  }

  @Test
  void chatterAtACrossingIsLeftOutOfTheWidthAndFlaggedWhenMoreThanALittle() {
    main();
    // The low level is lost twice for 30 us on closing: 60 us of 10.6 ms is more than a little.
    pulse(Channel.CENTRE_LOW, 11 * MS - 3381 + 480, 11 * MS - 3381 + 960);
    pulse(Channel.CENTRE_LOW, 11 * MS - 3381 + 1440, 11 * MS - 3381 + 1920);
    Timed timed = (Timed) measure();
    assertThat(timed.flags()).containsExactly(Flag.CHATTER);
    assertThat(timed.widthLowSeconds())
        .isCloseTo(RATE.seconds(11 * MS - 2 * 3381 + 960), within(1e-12));
    assertThat(timed.crossings().lowFallTicks()).isEqualTo(11 * MS - 3381 + 1920);
    assertThat(
            timed.blades().orElseThrow().openingSeconds().areaLinear()
                + timed.blades().orElseThrow().closingSeconds().areaLinear())
        .isCloseTo(
            LeafTravel.openingPlusClosingSeconds(
                timed.widthLowSeconds(),
                timed.widthHighSeconds(),
                LevelPair.GAUSS,
                OpeningLaw.AREA_LINEAR),
            within(1e-12));
  }

  @Test
  void aTouchOfChatterIsNotFlagged() {
    main();
    pulse(Channel.CENTRE_LOW, 11 * MS - 3381 + 20, 11 * MS - 3381 + 60);
    assertThat(((Timed) measure()).flags()).isEmpty();
  }

  /** Noise at slow crossings: the sum of time above a level is still its width. */
  @Test
  void noiseAtTheCrossingsAveragesOut(@Seed long seed) {
    Random random = new Random(seed);
    int shots = 50;
    double[] effective = new double[shots];
    for (int shot = 0; shot < shots; shot++) {
      // 20 ms ramps, 40 ms open, noise of 0.5 % of full light renewed each 5 us: 60 ms effective.
      int points = 16_000;
      double[] seconds = new double[points + 2];
      double[] open = new double[points + 2];
      for (int i = 0; i < points; i++) {
        seconds[i + 1] = 5e-6 * (i + 1);
        double clean = Math.min(1, Math.min(i, points - 1 - i) / 4000.0);
        open[i + 1] = Math.max(0, clean + 0.005 * random.nextGaussian());
      }
      seconds[points + 1] = 5e-6 * (points + 1);
      Timed timed =
          (Timed)
              LeafExposureMethod.measure(
                  CurveEdges.firing(new LightCurve(seconds, open), LevelPair.GAUSS),
                  LevelPair.GAUSS,
                  RATE);
      effective[shot] = timed.effectiveSeconds();
      assertThat(timed.blades().orElseThrow().totalSeconds().areaLinear())
          .as("seed %d", seed)
          .isCloseTo(80e-3, within(0.5e-3));
    }
    double mean = StatUtils.mean(effective);
    double meanError = Math.sqrt(StatUtils.variance(effective) / shots);
    // A false alarm once in a million runs; a bias of a thousandth of the exposure is still found.
    assertThat(meanError).as("seed %d", seed).isLessThan(8e-6);
    assertThat(mean).as("seed %d", seed).isCloseTo(60e-3, within(5 * meanError));
  }

  @Test
  void aDipWhileOpenCountsAsTimeBelowTheHighLevel() {
    pulse(Channel.CENTRE_LOW, 0, 20 * MS);
    pulse(Channel.CENTRE_HIGH, 1000, 8 * MS);
    pulse(Channel.CENTRE_HIGH, 9 * MS, 20 * MS - 1000);
    Timed timed = (Timed) measure();
    assertThat(timed.flags()).containsExactly(Flag.DIP_WHILE_OPEN);
    assertThat(timed.widthHighSeconds()).isEqualTo(RATE.seconds(19 * MS - 2000));
  }

  @Test
  void aPulseWithoutRampsIsTimedThoughTheChannelsDisagreeByAMicrosecond() {
    pulse(Channel.CENTRE_LOW, 100, 100 + 2 * MS);
    pulse(Channel.CENTRE_HIGH, 90, 110 + 2 * MS);
    Timed timed = (Timed) measure();
    assertThat(timed.effectiveSeconds()).isCloseTo(2e-3, within(1e-6));
    assertThat(timed.blades().orElseThrow().openingSeconds()).isEqualTo(new ByLaw(0, 0));
    assertThat(timed.blades().orElseThrow().totalSeconds().areaLinear()).isEqualTo(2e-3);
    assertThat(timed.blades().orElseThrow().efficiency().areaLinear()).isCloseTo(1, within(1e-3));
  }

  @Test
  void anHourIsTimed() {
    long hour = 3600L * 16_000_000;
    pulse(Channel.CENTRE_LOW, 1L << 33, (1L << 33) + hour);
    pulse(Channel.CENTRE_HIGH, (1L << 33) + 100, (1L << 33) + hour - 100);
    assertThat(((Timed) measure()).effectiveSeconds()).isCloseTo(3600, within(1e-4));
  }

  @Test
  void levelsBesideTheNodesAreAllowedForWithinLimits() {
    LevelPair beside = new LevelPair(0.20, 0.80);
    pulse(Channel.CENTRE_LOW, 3200, 11 * MS - 3200);
    pulse(Channel.CENTRE_HIGH, 12800, 11 * MS - 12800);
    Timed timed = (Timed) LeafExposureMethod.measure(firing(), beside, RATE);
    assertThat(timed.effectiveSeconds()).isCloseTo(10e-3, within(1e-12));
    assertThat(LeafExposureMethod.measure(firing(), new LevelPair(0.1, 0.9), RATE))
        .isEqualTo(new Unusable(Reason.LEVELS_TOO_FAR_OFF, List.of()));
  }

  @Test
  void openAndNotSeenToClose() {
    edges.add(new Edge(Channel.CENTRE_LOW, true, 1000));
    edges.add(new Edge(Channel.CENTRE_HIGH, true, 9000));
    assertThat(LeafExposureMethod.measure(firing(), LevelPair.GAUSS, RATE, 1000 + 4 * 16_000_000L))
        .isEqualTo(new StuckOpen(4, 1000));
    assertThat(measure()).isEqualTo(new StuckOpen(RATE.seconds(8000), 1000));
  }

  @Test
  void aSoundAloneIsNoLight() {
    edges.add(new Edge(Channel.CLICK, true, 5));
    assertThat(reason()).isEqualTo(Reason.NO_LIGHT);
  }

  @Test
  void damageGoesBeforeEverything() {
    main();
    assertThat(
            LeafExposureMethod.measure(
                firing(Firing.Damage.EDGES_LOST, Firing.Damage.LINES_LOST), LevelPair.GAUSS, RATE))
        .isEqualTo(
            new Unusable(
                Reason.DAMAGED, List.of(Firing.Damage.EDGES_LOST, Firing.Damage.LINES_LOST)));
  }

  @Test
  void lightBeforeTheFirstEdge() {
    edges.add(new Edge(Channel.CENTRE_LOW, false, 5));
    assertThat(reason()).isEqualTo(Reason.STARTS_IN_LIGHT);
  }

  @Test
  void theHighLevelAlone() {
    pulse(Channel.CENTRE_HIGH, 0, MS);
    assertThat(reason()).isEqualTo(Reason.HIGH_WITHOUT_LOW);
  }

  @Test
  void theHighLevelWhereTheLowOneIsDark() {
    main();
    pulse(Channel.CENTRE_HIGH, 14 * MS, 15 * MS);
    assertThat(reason()).isEqualTo(Reason.HIGH_WITHOUT_LOW);
  }

  @Test
  void levelsTheWrongWayRound() {
    pulse(Channel.CENTRE_HIGH, 3381, 11 * MS - 3381);
    pulse(Channel.CENTRE_LOW, 12619, 11 * MS - 12619);
    assertThat(reason()).isEqualTo(Reason.LEVELS_REVERSED);
  }

  @Test
  void aHighLevelThatDoesNotClose() {
    pulse(Channel.CENTRE_LOW, 0, 5 * MS);
    edges.add(new Edge(Channel.CENTRE_HIGH, true, 500));
    assertThat(reason()).isEqualTo(Reason.HIGH_DOES_NOT_CLOSE);
  }
}
