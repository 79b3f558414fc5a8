package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.calibration.LagEstimate.SquarePulse;
import org.halflight.exposure.LevelPair;
import org.halflight.shuttermodel.Crossing;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LightPath;
import org.junit.jupiter.api.Test;

/** Square pulses through the model front end, whose lag is known. Simulated. */
class LagEstimateTest {
  private static double width(double lagMicroseconds, double seconds, double rise, double fall) {
    FrontEnd sensor = new FrontEnd(0, 4000, lagMicroseconds, 0, Lamp.STEADY);
    LightPath square =
        new LightPath(
            new double[] {0, 1e-3, 1e-3, 1e-3 + seconds, 1e-3 + seconds},
            new double[] {0, 0, 1, 1, 0});
    List<Crossing> up = sensor.crossings(square, 0, 4000 * rise);
    List<Crossing> down = sensor.crossings(square, 0, 4000 * fall);
    return down.get(1).seconds() - up.get(0).seconds();
  }

  @Test
  void atTheGaussLevelsAPulseIsLongAndShortBy1Point317Lags() {
    // ln((1 - q) / q) at q = (1 - 1/sqrt 3) / 2 is ln(2 + sqrt 3) = 1.31696, by hand.
    LevelPair gauss = LevelPair.GAUSS;
    assertThat(LagEstimate.stretch(gauss.low(), gauss.low())).isCloseTo(1.31696, within(1e-5));
    assertThat(LagEstimate.stretch(gauss.high(), gauss.high())).isCloseTo(-1.31696, within(1e-5));
    assertThat(width(1, 1e-3, gauss.low(), gauss.low()))
        .isCloseTo(1e-3 + 1.31696e-6, within(1e-10));
  }

  @Test
  void theLagComesOutAndNothingIsCommonToBothLevels() {
    LevelPair gauss = LevelPair.GAUSS;
    for (double lag : new double[] {0.3, 1, 5}) {
      List<SquarePulse> pulses =
          List.of(100e-6, 1e-3, 20e-3).stream()
              .map(
                  seconds ->
                      new SquarePulse(
                          seconds,
                          width(lag, seconds, gauss.low(), gauss.low()),
                          width(lag, seconds, gauss.high(), gauss.high())))
              .toList();
      LagEstimate found = LagEstimate.of(pulses, gauss, gauss).orElseThrow();
      assertThat(found.lagSeconds()).isCloseTo(lag * 1e-6, within(1e-10));
      assertThat(found.commonSeconds()).isCloseTo(0, within(1e-10));
      assertThat(found.pulses()).isEqualTo(3);
    }
  }

  @Test
  void hysteresisIsTakenIntoAccountAndAnUnlikeDelayIsCommon() {
    LevelPair rising = new LevelPair(0.22, 0.79);
    LevelPair falling = new LevelPair(0.20, 0.77);
    SquarePulse pulse =
        new SquarePulse(
            1e-3,
            width(2, 1e-3, rising.low(), falling.low()) + 0.5e-6,
            width(2, 1e-3, rising.high(), falling.high()) + 0.5e-6);
    LagEstimate found = LagEstimate.of(List.of(pulse), rising, falling).orElseThrow();
    assertThat(found.lagSeconds()).isCloseTo(2e-6, within(1e-10));
    assertThat(found.commonSeconds()).isCloseTo(0.5e-6, within(1e-10));
    assertThat(found.spreadSeconds()).isEmpty();
    assertThat(LagEstimate.of(List.of(), rising, falling)).isEmpty();
  }
}
