package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.halflight.signal.BoardTraits;
import org.junit.jupiter.api.Test;

class RigOnBenchTest {
  private static final long SECOND = BoardTraits.USUAL.rate().ticks(1);

  private final PartsOfASession parts = new PartsOfASession();
  private final RigOnBench rig = parts.rig;

  private static SessionInput.RigIs is(String serial, long boots) {
    return new SessionInput.RigIs(serial, boots, BoardTraits.USUAL, "");
  }

  @Test
  void aStartIsKnownBySerialNumberAndCount() {
    assertThat(rig.isSameStart(is("R-0001", 7))).isTrue();
    assertThat(rig.isSameStart(is("R-0001", 8))).isFalse();
    assertThat(rig.isSame(is("R-0001", 8))).isTrue();
    assertThat(rig.isSame(is("R-0002", 7))).isFalse();
    assertThat(new RigOnBench().isFirst()).isTrue();
  }

  @Test
  void ticksOnlyGoOnUntilTheyStartAgain() {
    rig.onTicks(5 * SECOND, parts.events);
    rig.onTicks(4 * SECOND, parts.events);
    assertThat(rig.latestTicks()).isEqualTo(5 * SECOND);
    rig.forgetTicks();
    assertThat(rig.latestTicks()).isZero();
  }

  @Test
  void aSilenceIsNamed() {
    rig.onTicks(SECOND, parts.events);
    rig.onTicks(3 * SECOND, parts.events);
    rig.onRigIdentified(is("R-0001", 8), parts.events);
    assertThat(parts.events(SessionEvent.LinkGap.class))
        .containsExactly(
            new SessionEvent.LinkGap(OptionalDouble.of(2)),
            new SessionEvent.LinkGap(OptionalDouble.empty()));
  }
}
