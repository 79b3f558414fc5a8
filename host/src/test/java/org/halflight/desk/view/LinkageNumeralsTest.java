package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.InventedAdvance;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;

class LinkageNumeralsTest {
  @Test
  void theNewestIntervalIsLargeAndSaysWhichWay() {
    NumeralsText early = LinkageNumerals.of(tried(0.001, 0.0078));
    assertThat(early.large()).isEqualTo("+7.8");
    assertThat(early.unit()).isEqualTo("ms");
    assertThat(early.error()).isEqualTo("too early");
    assertThat(early.time()).isEqualTo("unlock it later");
    assertThat(early.note()).isEqualTo("Trial 2, advance ahead of shutter by");
    assertThat(early.tone()).isEqualTo(NumeralsText.Tone.OUTCOME);

    NumeralsText late = LinkageNumerals.of(tried(-0.0052));
    assertThat(late.large()).isEqualTo("-5.2");
    assertThat(late.error()).isEqualTo("too late");
    assertThat(late.time()).isEqualTo("unlock it earlier");

    NumeralsText good = LinkageNumerals.of(tried(0.0012));
    assertThat(good.large()).isEqualTo("+1.2");
    assertThat(good.error()).isEqualTo("good");
    assertThat(good.time()).isEqualTo("\u00b10.3 ms");
    assertThat(good.tone()).isEqualTo(NumeralsText.Tone.SETTLED);
    assertThat(good.spoken()).contains("+1.2 ms").contains("good");
  }

  @Test
  void overlappingClicksHaveAWordAndTheWayAllTheSame() {
    NumeralsText hidden = LinkageNumerals.of(tried(InventedAdvance.BLADES - 0.001));

    assertThat(hidden.large()).isEqualTo("too close to separate");
    assertThat(hidden.figure()).isFalse();
    assertThat(hidden.time()).isEqualTo("unlock it earlier");
  }

  private static AdvanceTiming tried(double... intervals) {
    return InventedAdvance.trials(Phase.ADJUSTING, intervals).linkage();
  }
}
