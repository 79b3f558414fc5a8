package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.SessionReducer;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * Firings across the wraps of the counter, and a flood, from the simulated board through the host's
 * own code. All simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class LongAndLateFiringsTest {
  private static final double TICKS_PER_SECOND = 16e6;
  private static final double A_TICK = 1 / TICKS_PER_SECOND;

  @TempDir private Path folder;

  @Test
  void aFiringLongAfterTheStartAndOneLongerThanTheWrapOf32Bits() throws Exception {
    long late = 0x3_0000_0000L;
    long muchLater = late + 0x1_8000_0000L;
    SessionReducer fold =
        UnpacedBoard.run(
            folder,
            List.of(
                "light all 40 4000",
                // A firing that begins just before a 32-bit wrap, more than 268 s after the start:
                // the counter stands a little over a second before the wrap, so that beats come
                // first.
                "preset 0.500 " + String.format("%012X", late - 0x100_0000),
                "pin 1.5484 low 1",
                "pin 1.5484 high 1",
                "pin 1.5644 high 0",
                "pin 1.5644 low 0",
                // A T exposure in the middle of which the counter goes on by more than a wrap
                // (402.7 s).
                "pin 2.500 low 1",
                "pin 2.500 high 1",
                "preset 3.000 " + String.format("%012X", muchLater),
                "pin 3.500 high 0",
                "pin 3.500 low 0",
                "end 4.5"));
    List<FiringResult> timed =
        fold.session().results().stream().filter(r -> r.outcome() == Outcome.TIMED).toList();
    assertThat(timed).hasSize(2);
    assertThat(timed.get(0).firing().firstTicks()).isLessThan(late);
    assertThat(timed.get(0).firing().lastTicks()).isGreaterThan(late);
    assertThat(timed.get(0).effectiveSeconds().orElseThrow()).isCloseTo(0.016, within(3 * A_TICK));
    // 0.5 s after the second preset, less the ticks at which the exposure began.
    double ends = (muchLater + 0.5 * TICKS_PER_SECOND) / TICKS_PER_SECOND;
    double began = timed.get(1).firing().firstTicks() / TICKS_PER_SECOND;
    assertThat(ends - began).isGreaterThan(268.5);
    assertThat(timed.get(1).effectiveSeconds().orElseThrow())
        .isCloseTo(ends - began, within(60 * A_TICK));
  }

  @Test
  void aFloodSpoilsItsFiringAndTheNextIsGood() throws Exception {
    SessionReducer fold =
        UnpacedBoard.run(
            folder,
            List.of(
                "light all 40 4000",
                "pin 0.500 low 1",
                "pin 0.500 high 1",
                "burst 0.501 click 4000 3",
                "pin 0.520 high 0",
                "pin 0.520 low 0",
                "pin 1.500 low 1",
                "pin 1.500 high 1",
                "pin 1.516 high 0",
                "pin 1.516 low 0",
                "end 3"));
    List<FiringResult> results = fold.session().results();
    int last = results.size() - 1;
    assertThat(results.get(last - 1).outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(results.get(last).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(results.get(last).effectiveSeconds().orElseThrow())
        .isCloseTo(0.016, within(3 * A_TICK));
    assertThat(fold.linkStatistics().bad()).isZero();
  }
}
