package org.halflight.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class RigProfileTest {
  @Test
  void aFastClockMakesTimesTooLong() {
    ClockRate clock = new ClockRate(3450, 2, Double.POSITIVE_INFINITY, ClockRate.Source.HOST_CLOCK);

    // By hand: in a second it counts 16 000 000 x 1.00345 ticks.
    assertThat(clock.rate(TickRate.BOARD_16_MHZ).ticksPerSecond()).isEqualTo(16_055_200);
    assertThat(clock.seconds(1.00345)).isCloseTo(1, within(1e-12));
  }

  @Test
  void tripPointsHaveAnOffsetAndAHysteresis() {
    ComparatorTrips trip = new ComparatorTrips(3, -1, 0.2);
    assertThat(trip.offsetCounts()).isEqualTo(1);
    assertThat(trip.hysteresisCounts()).isEqualTo(4);
  }

  @Test
  void aLineIsLeastSureFarFromItsMiddle() {
    // Variance 4 - 2 x 1 x 1.5 + 1 = 2 by hand at one second.
    WidthLine line = new WidthLine(0, 1.01, 4, 1, -1.5, 1, 3);
    assertThat(line.standardUncertaintySeconds(1)).isCloseTo(Math.sqrt(2), within(1e-12));
    assertThat(line.slopeIsFixed()).isFalse();
    assertThat(new WidthLine(1e-6, 1, 1e-14, 0, 0, 1e-7, 9).slopeIsFixed()).isTrue();
  }

  @Test
  void lightOutsideTheRangeIsTold() {
    LightRange range = new LightRange(4, 600, 800);
    assertThat(range.holds(560, 0.1)).isTrue();
    assertThat(range.holds(530, 0.1)).isFalse();
    assertThat(range.holds(900, 0.1)).isFalse();
  }

  @Test
  void numbersThatCannotBeAreTheCallersMistake() {
    assertThatThrownBy(() -> new ComparatorTrips(Double.NaN, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new FrontEndLag(1e-6, -1e-7))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new ClockRate(90_000, 1, 5, ClockRate.Source.GENERATOR))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new LightRange(600, 500, 700))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
