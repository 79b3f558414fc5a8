package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.UnlockSign.By;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A slow squeeze at 1/8; every edge is invented, and times are in seconds from first light. */
class UnlockSignTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final double ORIGIN = 10;
  private static final double DARK = 0.125;

  private final List<Edge> edges = new ArrayList<>();

  @BeforeEach
  void theShutterOpensForAnEighth() {
    at(0, Channel.CENTRE_LOW, true);
    at(DARK, Channel.CENTRE_LOW, false);
  }

  @Test
  void theFirstLeavingOfTheWireTells() {
    button(-1.2, 0.6);
    leaves(-0.18);

    assertThat(sign().by()).isEqualTo(By.KNOB);
    assertThat(sign().aheadSeconds().orElseThrow()).isCloseTo(0.18, within(1e-6));
  }

  @Test
  void bouncesOfTheFoilAreOneMove() {
    button(-1.2, 0.6);
    at(0.03, Channel.KNOB, false);
    at(0.035, Channel.KNOB, true);
    at(0.041, Channel.KNOB, false);

    assertThat(sign().by()).isEqualTo(By.KNOB);
    assertThat(sign().aheadSeconds().orElseThrow()).isCloseTo(-0.03, within(1e-6));
  }

  @Test
  void aFoilThatOnlyTremblesHasNotLeft() {
    button(-1.2, 0.6);
    at(-0.3, Channel.KNOB, false);
    at(-0.295, Channel.KNOB, true);

    assertThat(sign()).isEqualTo(UnlockSign.NONE);
  }

  @Test
  void windingBeforeThePressAndTryingTheWindAfterItAreNoUnlock() {
    leaves(-3);
    touches(-2);
    button(-1.2, 0.6);
    leaves(1.4);

    assertThat(sign()).isEqualTo(UnlockSign.NONE);
  }

  @Test
  void whereTheButtonIsNotWiredALateMoveIsTheHandAtTheKnob() {
    leaves(0.4);
    assertThat(sign().aheadSeconds().orElseThrow()).isCloseTo(-0.4, within(1e-6));

    edges.removeIf(edge -> edge.channel() == Channel.KNOB);
    leaves(0.6);
    assertThat(sign()).isEqualTo(UnlockSign.NONE);
  }

  @Test
  void twoMovesWithinTheSqueezeTellNothing() {
    button(-1.2, 0.6);
    leaves(-0.4);
    touches(-0.2);
    leaves(0.1);

    assertThat(sign().by()).isEqualTo(By.SEVERAL);
    assertThat(sign().aheadSeconds()).isEmpty();
  }

  @Test
  void aContactThatChattersTellsNothing() {
    button(-1.2, 0.6);
    for (int i = 0; i < 120; i++) {
      at(-0.6 + 5e-3 * i, Channel.KNOB, i % 2 == 1);
    }

    assertThat(sign().by()).isEqualTo(By.CHATTER);
  }

  @Test
  void aClickTellsOnlyBeforeLight() {
    button(-1.2, 0.6);
    for (double theirs :
        new double[] {-0.019, 0.019, 0.06, DARK + 0.019, DARK + 0.05, 0.585, 0.7}) {
      clicks(theirs);
      assertThat(sign()).as("%s", theirs).isEqualTo(UnlockSign.NONE);
    }
    clicks(-0.021);
    assertThat(sign().by()).isEqualTo(By.CLICK);
    assertThat(sign().aheadSeconds().orElseThrow()).isCloseTo(0.021, within(1e-6));
  }

  @Test
  void severalClicksTellNothing() {
    button(-1.2, 0.6);
    click(-0.3);
    click(-0.1);

    assertThat(sign().by()).isEqualTo(By.SEVERAL);
  }

  @Test
  void theKnobOutweighsClicks() {
    button(-1.2, 0.6);
    leaves(-0.05);
    click(-0.4);
    click(-0.3);

    assertThat(sign().aheadSeconds().orElseThrow()).isCloseTo(0.05, within(1e-6));
  }

  private UnlockSign sign() {
    List<Edge> light = edges.stream().filter(e -> e.channel().isLight()).toList();
    List<Edge> knob = edges.stream().filter(e -> e.channel() == Channel.KNOB).toList();
    List<Edge> others = edges.stream().filter(e -> e.channel() != Channel.KNOB).toList();
    return UnlockSign.of(new Firing(others, List.of(), knob), new Firing(light, List.of()), RATE);
  }

  private void button(double pressed, double returned) {
    at(pressed, Channel.RELEASE, true);
    at(returned, Channel.RELEASE, false);
  }

  private void leaves(double seconds) {
    at(seconds, Channel.KNOB, false);
  }

  private void touches(double seconds) {
    at(seconds, Channel.KNOB, true);
  }

  /** This click and no other. */
  private void clicks(double seconds) {
    edges.removeIf(edge -> edge.channel() == Channel.CLICK);
    click(seconds);
  }

  private void click(double seconds) {
    at(seconds, Channel.CLICK, true);
    at(seconds + 0.002, Channel.CLICK, false);
  }

  private void at(double seconds, Channel channel, boolean high) {
    edges.add(new Edge(channel, high, RATE.ticks(ORIGIN + seconds)));
  }
}
