package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TypedPlungerTest {
  @Test
  void millimetresOrTurnsAndDivisionsAreRead() {
    assertThat(TypedPlunger.read("1.60", "1,75").gapMm()).isCloseTo(0.15, within(1e-9));
    // A division of a screw of 0.5 mm pitch with 20 divisions is 0.025 mm.
    assertThat(TypedPlunger.read("3+4", " 3 + 10 ").advanceMm()).isCloseTo(1.6, within(1e-9));
    assertThat(TypedPlunger.read("3+4", "3+10").gapMm()).isCloseTo(0.15, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "a bit", "3+20", "-1", "21", "1.6.0"})
  void whatIsNoReadingIsRefusedInOneLine(String typed) {
    assertThatThrownBy(() -> TypedPlunger.read("1.60", typed))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("screw plunger")
        .hasMessageNotContaining("\n");
  }
}
