package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShutterKindTest {
  @ParameterizedTest
  @CsvSource({
    "CURTAIN_LONG_SIDE, '1,1/60', true",
    "CURTAIN_SHORT_SIDE, custom, true",
    "ROTARY, leaf, true",
    "LEAF, leaf, false",
    "LEAF, curtain, false",
    "LEAF_BEHIND_LENS, custom, false",
    "OTHER, curtain, false",
    "UNKNOWN, curtain, true",
    "UNKNOWN, leaf, false",
    "UNKNOWN, '1,1/60', false"
  })
  void theKindTellsWhetherItHasCurtainsAndTheDialOnlyWhereNobodySaid(
      ShutterKind kind, String dial, boolean curtain) {
    assertThat(kind.isCurtain(dial)).isEqualTo(curtain);
    assertThat(kind.isCurtain("custom", dial)).isEqualTo(curtain);
  }
}
