package org.halflight.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.light.ScreenLight.Finding;
import org.junit.jupiter.api.Test;

/** Whether a screen reaches the sensor: 0.3 % of the wanted light is our own limit. */
class ScreenLightTest {
  @Test
  void whatWhiteBringsAboveBlackIsAShareOfTheWantedLight() {
    ScreenLight bright = ScreenLight.of(List.of(28.0, 28.2, 27.9), List.of(8.0, 8.1, 8.0), 800);
    assertThat(bright.share()).isCloseTo(0.025, within(2e-4));
    assertThat(bright.finding()).isEqualTo(Finding.REACHES);
  }

  @Test
  void aDriftOfTheLampIsNoScreen() {
    // A tenth of a count a turn: each white lies half a step after its black.
    ScreenLight none = ScreenLight.of(List.of(8.4, 8.5, 8.6), List.of(8.35, 8.45, 8.55), 800);
    assertThat(none.finding()).isEqualTo(Finding.DOES_NOT);
  }

  @Test
  void lightThatMovesTellsNothing() {
    ScreenLight moved = ScreenLight.of(List.of(30.0, 8.0, 40.0), List.of(8.0, 30.0, 8.0), 800);
    assertThat(moved.finding()).isEqualTo(Finding.UNCLEAR);
  }

  @Test
  void onePairIsNoCheck() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ScreenLight.of(List.of(8.0), List.of(8.0), 800));
  }
}
