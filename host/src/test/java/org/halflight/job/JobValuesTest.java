package org.halflight.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Map;
import org.halflight.speeds.FrameSize;
import org.junit.jupiter.api.Test;

class JobValuesTest {
  @Test
  void refusesWhatHasNoUnitAndNoSize() {
    assertThatThrownBy(() -> new MeasuredValue(BigDecimal.ONE, " "))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new FrameSize(0, 1)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void whatWasNotAnsweredIsNotTested() {
    Checklist list =
        new Checklist(Map.of(CheckItem.WIND, new Finding(CheckState.OK, "")))
            .with(CheckItem.LENS, CheckState.FAULT, "haze");
    assertThat(list.findings()).hasSize(CheckItem.values().length);
    assertThat(list.of(CheckItem.LENS).note()).isEqualTo("haze");
    assertThat(list.of(CheckItem.WIND).state()).isEqualTo(CheckState.OK);
    assertThat(list.of(CheckItem.BLADES)).isEqualTo(Finding.NOT_TESTED);
  }
}
