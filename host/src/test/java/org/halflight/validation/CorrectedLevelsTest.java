package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The figures of docs/validation.md about levels are those that the program works out now. */
class CorrectedLevelsTest {
  @Test
  void thePageHasTodaysFigures() throws Exception {
    assertThat(Files.readString(Path.of("docs/validation.md")))
        .contains(String.join("\n", CorrectedLevels.page()));
  }

  @Test
  void theSweepMendsWhatOffsetAndHysteresisCost() {
    CorrectedLevels.Errors fast = CorrectedLevels.of(1 / 500.0);
    // By hand: 40 mV of 3960 is 1.0 % of light, hysteresis does not matter where ramps are alike:
    // each width shrinks by 2 ms of ramps times the slope of sqrt q times 0.0101.
    assertThat(fast.before()).isLessThan(-0.015);
    assertThat(fast.sweptAndFull()).isCloseTo(-0.0072, within(0.001));
    assertThat(Math.abs(fast.curveAndFull())).isLessThan(0.002);
    CorrectedLevels.Errors slow = CorrectedLevels.of(1);
    // Edges of a slow firing hardly know the lamp; the integral knows all of it.
    assertThat(Math.abs(slow.before())).isLessThan(1e-4);
    assertThat(slow.curve()).isCloseTo(-CorrectedLevels.LAMP_FADE, within(5e-4));
    assertThat(Math.abs(slow.curveAndFull())).isLessThan(2e-4);
  }
}
