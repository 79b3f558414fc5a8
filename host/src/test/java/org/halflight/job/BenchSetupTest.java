package org.halflight.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.job.BenchSetup.Difference;
import org.junit.jupiter.api.Test;

class BenchSetupTest {
  private static final BenchSetup DRY =
      new BenchSetup(true, true, true, OptionalDouble.of(8), Attitude.LENS_LEVEL, false);

  @Test
  void namesWhatTwoSetUpsDifferIn() {
    assertThat(DRY.differencesFrom(DRY)).isEmpty();
    assertThat(
            DRY.differencesFrom(
                new BenchSetup(true, true, true, OptionalDouble.of(8), Attitude.LENS_LEVEL, true)))
        .containsExactly(Difference.STILL_WET);
    assertThat(
            DRY.differencesFrom(
                new BenchSetup(
                    false, false, false, OptionalDouble.empty(), Attitude.LENS_DOWN, true)))
        .containsExactlyInAnyOrder(Difference.values());
  }

  @Test
  void refusesWhatIsNoStopAndNoUnit() {
    assertThatThrownBy(
            () ->
                new BenchSetup(true, true, true, OptionalDouble.of(0), Attitude.LENS_LEVEL, false))
        .isInstanceOf(IllegalArgumentException.class);
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
