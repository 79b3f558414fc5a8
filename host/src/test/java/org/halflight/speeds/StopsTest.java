package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StopsTest {
  @Test
  void slowIsAboveZeroAndFastBelow() {
    assertThat(Stops.between(2, 1)).isEqualTo(1);
    assertThat(Stops.between(0.25, 1)).isEqualTo(-2);
  }

  /**
   * Spacecraft shutter: NASA PDS4 dictionary, Cassini ISS, mean offset 2.75 ms; a commanded 5 ms
   * lasts 2.25 ms, which is -1.152 stop.
   */
  @Test
  void spacecraftShutterOffset() {
    assertThat(Stops.between(5 - 2.75, 5)).isCloseTo(-1.152, within(5e-4));
  }

  @Test
  void ratioUndoesBetween() {
    assertThat(Stops.ratio(-13)).isEqualTo(1 / 8192.0);
    assertThat(Stops.between(Stops.ratio(0.37), 1)).isCloseTo(0.37, within(1e-12));
  }

  @Test
  void zeroAndNotANumberAreRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> Stops.between(0, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Stops.between(1, 0));
    assertThatIllegalArgumentException().isThrownBy(() -> Stops.between(Double.NaN, 1));
  }
}
