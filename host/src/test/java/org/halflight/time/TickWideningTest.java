package org.halflight.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

class TickWideningTest {
  @Test
  void theLowBitsWrapBetweenAnchorAndEdge() {
    TickWidening widening = new TickWidening(0x1_FFFF_FF00L);
    assertThat(widening.widen(0x0000_0010)).isEqualTo(0x2_0000_0010L);
    assertThat(widening.widen(0xFFFF_FFF0)).isEqualTo(0x1_FFFF_FFF0L);
  }

  @Test
  void anEdgeFromJustBeforeAnAnchorThatWrappedIsNotInTheFuture() {
    TickWidening widening = new TickWidening(0x3_0000_0005L);
    assertThat(widening.widen(0xFFFF_FFFE)).isEqualTo(0x2_FFFF_FFFEL);
  }

  @Test
  void anyTickWithinHalfAWrapOfTheAnchorComesBack(@Seed long seed) {
    Random random = new Random(seed);
    TickWidening widening = new TickWidening(0);
    long ticks = 0;
    for (int i = 0; i < 10_000; i++) {
      ticks += random.nextLong(0, 1L << 31);
      assertThat(widening.widen((int) ticks)).as("seed %d, step %d", seed, i).isEqualTo(ticks);
      widening.anchor(ticks);
    }
  }
}
