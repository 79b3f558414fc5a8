package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.KnobMove.Found;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** The move of the foil that unlocks the advance, among those of a hand. Times are invented. */
class KnobMoveTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final double LIGHT = 100;

  private final List<Edge> knob = new ArrayList<>();

  private void knob(boolean touches, double beforeLight) {
    knob.add(new Edge(Channel.KNOB, touches, RATE.ticks(LIGHT - beforeLight)));
  }

  private KnobMove move() {
    return KnobMove.of(
        new Firing(
            List.of(
                new Edge(Channel.CENTRE_LOW, true, RATE.ticks(LIGHT)),
                new Edge(Channel.CENTRE_LOW, false, RATE.ticks(LIGHT + 0.125))),
            List.of(),
            knob),
        RATE);
  }

  @Test
  void aFoilThatLeavesOnceTellsHowFarAheadTheAdvanceWas() {
    knob(false, 0.18);
    assertThat(move().found()).isEqualTo(Found.LEFT);
    assertThat(move().aheadSeconds().orElseThrow()).isCloseTo(0.18, within(1e-6));
  }

  @Test
  void afterTheLightItIsBelowZero() {
    knob(true, 2);
    knob(false, -0.4);
    assertThat(move().found()).isEqualTo(Found.LEFT);
    assertThat(move().aheadSeconds().orElseThrow()).isCloseTo(-0.4, within(1e-6));
  }

  @Test
  void chatterIsOneMoveByItsBeginning() {
    for (int i = 0; i < 12; i++) {
      knob(i % 2 == 1, 0.3 - 0.005 * i);
    }
    knob(false, 0.235);
    assertThat(move().found()).isEqualTo(Found.LEFT);
    assertThat(move().aheadSeconds().orElseThrow()).isCloseTo(0.3, within(1e-6));
  }

  @Test
  void aFoilThatIsPutOnTheWireWithChatterHasNotLeftIt() {
    knob(true, 2.9);
    knob(false, 2.89);
    knob(true, 2.88);
    assertThat(move()).isEqualTo(new KnobMove(Found.NOT_SEEN, java.util.OptionalDouble.empty()));
  }

  @Test
  void twoMovesAreNotOne() {
    knob(false, 1.5);
    knob(true, 1.0);
    knob(false, 0.1);
    assertThat(move().found()).isEqualTo(Found.MORE_THAN_ONCE);
    assertThat(move().aheadSeconds()).isEmpty();
  }

  @Test
  void withoutAnEdgeNothingIsSeen() {
    assertThat(move().found()).isEqualTo(Found.NOT_SEEN);
  }

  @Test
  void aPressWithoutLightHasAMoveAndNoTimeToLight() {
    Firing press =
        new Firing(
            List.of(new Edge(Channel.RELEASE, true, RATE.ticks(LIGHT))),
            List.of(),
            List.of(new Edge(Channel.KNOB, false, RATE.ticks(LIGHT))));
    assertThat(KnobMove.of(press, RATE).found()).isEqualTo(Found.LEFT);
    assertThat(KnobMove.of(press, RATE).aheadSeconds()).isEmpty();
  }
}
