package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.halflight.fixtures.Seeds;
import org.halflight.profile.ClockRate;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class EdgeTrainTest {
  private static final TickRate BOARD = TickRate.BOARD_16_MHZ;

  private static long[] ticks(int n, double hertz, double fastPpm, double jitterSeconds) {
    Random random = new Random(Seeds.usually(11));
    long[] ticks = new long[n];
    for (int i = 0; i < n; i++) {
      double at = i / hertz + jitterSeconds * random.nextGaussian();
      ticks[i] = 5_000_000 + Math.round(at * 16e6 * (1 + fastPpm * 1e-6));
    }
    return ticks;
  }

  @Test
  void aPulsePerSecondGivesTheRate() {
    EdgeTrain train = new EdgeTrain(1, 0.01, ClockRate.Source.PULSE_PER_SECOND);
    EdgeTrain.Found found = (EdgeTrain.Found) train.rate(ticks(60, 1, 3450, 1e-6), BOARD);
    assertThat(found.rate().fastPpm()).isCloseTo(3450, within(0.05));
    assertThat(found.rate().standardUncertaintyPpm()).isBetween(0.005, 0.05);
  }

  @Test
  void missingEdgesDoNoHarm() {
    long[] all = ticks(40, 1, -2000, 1e-6);
    long[] some = new long[38];
    System.arraycopy(all, 0, some, 0, 10);
    System.arraycopy(all, 11, some, 10, 14);
    System.arraycopy(all, 26, some, 24, 14);
    EdgeTrain train = new EdgeTrain(1, 0, ClockRate.Source.GENERATOR);
    assertThat(((EdgeTrain.Found) train.rate(some, BOARD)).rate().fastPpm())
        .isCloseTo(-2000, within(0.1));
  }

  @Test
  void aLampIsTrustedLess() {
    EdgeTrain.Found found =
        (EdgeTrain.Found) EdgeTrain.ofMains(50).rate(ticks(1000, 100, 100, 50e-6), BOARD);
    assertThat(found.rate().fastPpm()).isCloseTo(100, within(5.0));
    assertThat(found.rate().standardUncertaintyPpm()).isGreaterThan(500);
    assertThat(found.rate().degreesOfFreedom()).isGreaterThan(1e6);
  }

  @Test
  void anotherFrequencyAndTooFewEdgesAreSaid() {
    assertThat(EdgeTrain.ofMains(50).rate(ticks(100, 120, 0, 0), BOARD))
        .isEqualTo(new EdgeTrain.OtherFrequency());
    assertThat(EdgeTrain.ofMains(50).rate(ticks(9, 100, 0, 0), BOARD))
        .isEqualTo(new EdgeTrain.TooFew(9));
  }

  @Test
  void aSlotUncoversEveryPointForItsPartOfATurn() {
    SlottedDisc disc = new SlottedDisc(7.2, 0.05);
    // By hand: 7.2 of 360 degrees is a fiftieth of a turn; at 600 turns a minute 2 ms.
    assertThat(disc.effectiveSeconds(0.1)).isCloseTo(0.002, within(1e-15));
    assertThat(disc.effectiveSecondsAt(600)).isCloseTo(0.002, within(1e-15));
    assertThat(disc.standardUncertaintyShare()).isCloseTo(0.05 / 7.2, within(1e-15));
  }
}
