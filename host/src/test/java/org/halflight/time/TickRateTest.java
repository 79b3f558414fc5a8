package org.halflight.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class TickRateTest {
  @Test
  void aTickOfThe16MegahertzBoardIs62AndAHalfNanoseconds() {
    assertThat(TickRate.BOARD_16_MHZ.seconds(1)).isEqualTo(62.5e-9);
    assertThat(TickRate.BOARD_16_MHZ.millis(16_000)).isEqualTo(1.0);
  }

  @Test
  void secondsGoToTheNearestTick() {
    assertThat(TickRate.BOARD_16_MHZ.ticks(93e-9)).isEqualTo(1);
    assertThat(TickRate.BOARD_16_MHZ.ticks(94e-9)).isEqualTo(2);
  }

  @Test
  void aRateOfZeroIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new TickRate(0));
  }
}
