package org.halflight.shuttermodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.halflight.fixtures.Seed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class FrontEndTest {
  private static final double DARK = 40;
  private static final double FULL = 4040;
  private static final LightCurve TRAPEZE =
      new LightCurve(new double[] {0, 1e-3, 5e-3, 7e-3}, new double[] {0, 1, 1, 0});

  private static double millivolts(double level) {
    return DARK + level * (FULL - DARK);
  }

  private static FrontEnd lagged(double lagMicroseconds) {
    return new FrontEnd(DARK, FULL, lagMicroseconds, 0, Lamp.STEADY);
  }

  /**
   * docs/protocol.md: a code c gives (c + 1)/256 of the supply, 2B and A1 about 0.84 and 3.16 V.
   */
  @Test
  void thresholdCodesGiveTheVoltagesOfTheProtocol() {
    assertThat(FrontEnd.thresholdMillivolts(0x2B)).isCloseTo(840, within(20.0));
    assertThat(FrontEnd.thresholdMillivolts(0xA1)).isCloseTo(3160, within(5.0));
    assertThat(FrontEnd.thresholdMillivolts(0)).isEqualTo(5000.0 / 256);
    assertThat(FrontEnd.thresholdMillivolts(255)).isEqualTo(5000);
    assertThatThrownBy(() -> FrontEnd.thresholdMillivolts(256))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void codeNearestToALevelStandsNearestToIt() {
    FrontEnd sensor = FrontEnd.ideal(DARK, FULL);
    for (double level = 0.02; level < 0.98; level += 0.01) {
      int code = sensor.codeNearest(level);
      double off = Math.abs(sensor.levelOf(code) - level);
      assertThat(off).isLessThanOrEqualTo(Math.abs(sensor.levelOf(code + 1) - level));
      assertThat(off).isLessThanOrEqualTo(Math.abs(sensor.levelOf(code - 1) - level));
    }
  }

  @Test
  void straightRampsAreCrossedWhereTheyAre() {
    List<Crossing> found =
        FrontEnd.ideal(DARK, FULL).crossings(LightPath.of(TRAPEZE), 0, millivolts(0.25));
    assertThat(found).extracting(Crossing::rising).containsExactly(true, false);
    assertThat(found.get(0).seconds()).isCloseTo(0.25e-3, within(1e-12));
    assertThat(found.get(0).millivoltsPerSecond()).isCloseTo(4e6, within(1.0));
    assertThat(found.get(1).seconds()).isCloseTo(6.5e-3, within(1e-12));
    assertThat(found.get(1).millivoltsPerSecond()).isCloseTo(-2e6, within(1.0));
  }

  /**
   * A square pulse through one pole rises to q after tau ln(1/(1 - q)) and falls to it after tau
   * ln(1/q) (any circuit book), so it comes out longer by tau ln((1 - q)/q).
   */
  @Test
  void lagMakesSquarePulsesLongerLowDownAndShorterHighUp() {
    LightCurve square = new LightCurve(new double[] {0, 0, 1e-2, 1e-2}, new double[] {0, 1, 1, 0});
    double tau = 20e-6;
    for (double q : new double[] {0.2113, 0.5, 0.7887}) {
      List<Crossing> found = lagged(20).crossings(LightPath.of(square), 0, millivolts(q));
      assertThat(found).hasSize(2);
      assertThat(found.get(0).seconds()).isCloseTo(-tau * Math.log(1 - q), within(1e-12));
      assertThat(found.get(1).seconds() - found.get(0).seconds() - 1e-2)
          .isCloseTo(tau * Math.log((1 - q) / q), within(1e-12));
    }
  }

  /**
   * A settled one-pole lag follows a straight line later by its time constant (any circuit book).
   */
  @Test
  void lagDelaysASlowRampByItsTimeConstant() {
    List<Crossing> found = lagged(5).crossings(LightPath.of(TRAPEZE), 0, millivolts(0.5));
    assertThat(found.get(0).seconds()).isCloseTo(0.5e-3 + 5e-6, within(1e-11));
    assertThat(found.get(1).seconds()).isCloseTo(6e-3 + 5e-6, within(1e-11));
  }

  @Test
  void lagFoundInTheTailAfterTheLastPoint() {
    LightCurve cliff = new LightCurve(new double[] {0, 1e-3, 1e-3}, new double[] {0, 1, 0});
    List<Crossing> found = lagged(50).crossings(LightPath.of(cliff), 0, millivolts(0.3));
    assertThat(found).hasSize(2);
    // At 1 ms the output lags the ramp by tau: 0.95 of full light (settled for 20 tau).
    assertThat(found.get(1).seconds())
        .isCloseTo(1e-3 + 50e-6 * Math.log(0.95 / 0.3), within(1e-11));
  }

  @Test
  void stepsWithoutLagAreCrossedAtOnce() {
    LightCurve square = new LightCurve(new double[] {0, 0, 1, 1}, new double[] {0, 1, 1, 0});
    assertThat(lagged(0).crossings(LightPath.of(square), 0, millivolts(0.5)))
        .extracting(Crossing::seconds)
        .containsExactly(0.0, 1.0);
  }

  @Test
  void rippleNearTheThresholdIsSeenAndDriftCounts() {
    Lamp rippling = new Lamp(0, 1, 100, 0.05);
    FrontEnd sensor = new FrontEnd(DARK, FULL, 0, 0, rippling);
    LightPath held = new LightPath(new double[] {0, 0.1}, new double[] {1, 1});
    List<Crossing> found = sensor.crossings(held, 0.001, millivolts(1));
    // A sine of 100 Hz passes its mean 20 times in 100 ms, every 5 ms.
    assertThat(found).hasSize(20);
    assertThat(found.get(0).seconds()).isCloseTo(0.004, within(1e-5));
    Lamp fading = new Lamp(-0.1, 10, 0, 0);
    assertThat(fading.at(0)).isEqualTo(1);
    assertThat(fading.at(10)).isCloseTo(1 - 0.1 * (1 - Math.exp(-1)), within(1e-12));
    List<Crossing> fallen =
        new FrontEnd(DARK, FULL, 0, 0, fading)
            .crossings(
                new LightPath(new double[] {0, 60}, new double[] {1, 1}), 0, millivolts(0.95));
    assertThat(fallen).hasSize(1);
    assertThat(fallen.get(0).seconds()).isCloseTo(10 * Math.log(2), within(1e-2));
  }

  @Test
  void noiseMovesACrossingByNoiseOverSlope(@Seed(99) long seed) {
    SeededDraws draws = new SeededDraws(seed);
    FrontEnd noisy = new FrontEnd(DARK, FULL, 0, 2, Lamp.STEADY);
    DescriptiveStatistics rises = new DescriptiveStatistics();
    int count = 2000;
    for (int i = 0; i < count; i++) {
      rises.addValue(
          noisy.noisyCrossings(LightPath.of(TRAPEZE), 0, millivolts(0.5), draws).get(0).seconds());
    }
    double expected = 2 / 4e6;
    assertThat(rises.getMean())
        .as("seed %d", seed)
        .isCloseTo(0.5e-3, within(4 * expected / Math.sqrt(count)));
    assertThat(rises.getStandardDeviation())
        .as("seed %d", seed)
        .isCloseTo(expected, within(4 * expected / Math.sqrt(2.0 * (count - 1))));
  }

  @Test
  void lowLevelIsStampedToTheNextTickAndTheOthersAFewLater() {
    SensorSet sensors = SensorSet.IDEAL;
    long start = 1_000_003;
    List<Edge> edges = sensors.edges(TRAPEZE, start, 0x36, 0xA1, 7);
    assertThat(edges).hasSize(8).isSortedAccordingTo((a, b) -> Long.compare(a.ticks(), b.ticks()));
    for (Channel channel : Channel.values()) {
      if (!channel.isLight()) {
        continue;
      }
      double threshold =
          SensorSet.threshold(
              channel, FrontEnd.thresholdMillivolts(0x36), FrontEnd.thresholdMillivolts(0xA1));
      List<Edge> own = edges.stream().filter(edge -> edge.channel() == channel).toList();
      List<Crossing> exact = sensors.of(channel).crossings(LightPath.of(TRAPEZE), 0, threshold);
      assertThat(own).hasSize(2);
      for (int i = 0; i < 2; i++) {
        double late =
            own.get(i).ticks()
                - start
                - exact.get(i).seconds() * TickRate.BOARD_16_MHZ.ticksPerSecond();
        assertThat(late).isBetween(-1e-6, channel == Channel.CENTRE_LOW ? 1.0 : 5.0);
      }
    }
  }
}
