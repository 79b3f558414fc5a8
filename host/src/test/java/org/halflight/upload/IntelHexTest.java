package org.halflight.upload;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class IntelHexTest {
  // The sums were made by hand: 256 less the sum of the other bytes, modulo 256.
  private static final String FOUR = ":0400000001020304F2\n";
  private static final String TWO_MORE = ":02000400AABB95\n";
  private static final String END = ":00000001FF\n";

  @Test
  void readsTheLinesInOrder() {
    assertThat(IntelHex.read(FOUR + TWO_MORE + END, 100))
        .hasValueSatisfying(bytes -> assertThat(bytes).containsExactly(1, 2, 3, 4, 0xAA, 0xBB));
    assertThat(IntelHex.read((FOUR + END).replace("\n", "\r\n"), 4)).isPresent();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // a digit changed, no end, a line after the end, a gap, a line cut off, another type,
        // nothing
        ":0400000001020314F2\n:00000001FF\n",
        ":0400000001020304F2\n",
        ":0400000001020304F2\n:00000001FF\n:0400000001020304F2\n",
        ":0400000001020304F2\n:02000600AABB93\n:00000001FF\n",
        ":04000000010203\n:00000001FF\n",
        ":020000021000EC\n:00000001FF\n",
        ":00000001FF\n",
        "",
        "no hex\n"
      })
  void refusesWhatIsDamaged(String text) {
    assertThat(IntelHex.read(text, 100)).isEmpty();
  }

  @Test
  void refusesWhatTheFlashHasNoRoomFor() {
    assertThat(IntelHex.read(FOUR + TWO_MORE + END, 6)).isPresent();
    assertThat(IntelHex.read(FOUR + TWO_MORE + END, 5)).isEmpty();
  }
}
