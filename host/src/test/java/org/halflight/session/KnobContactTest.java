package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The knob contact in a session: beside the firings, and what is said where it is no help. */
class KnobContactTest {
  private final InventedBench bench = new InventedBench();

  @BeforeEach
  void aRigWithAKnobContact() {
    bench.handle(
        new SessionInput.RigIs(
            "R-0002", 1, new BoardTraits(TickRate.BOARD_16_MHZ, false, true), "1.2.0"));
    bench.setLight();
    bench.begin(
        InventedBench.setup(
            Phase.AS_FOUND,
            1,
            List.of(InventedBench.S8),
            List.of(UntimedTest.LINKAGE),
            CameraCustoms.NONE));
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
  }

  private void press(LinkageStep step, WindState wind) {
    bench.handle(new SessionInput.PressJudged(step, wind));
  }

  @Test
  void aRigWithoutAClickSensorSaysSo() {
    bench.handle(
        new SessionInput.RigIs(
            "R-0004",
            1,
            new BoardTraits(TickRate.BOARD_16_MHZ, BoardTraits.Kind.STARTER, true),
            "1.3.0"));
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.SELF_TIMER));
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));

    assertThat(said()).containsExactly(KnobTrouble.NO_CLICKS);
  }

  private List<KnobTrouble> said() {
    return bench.news(SessionEvent.KnobContact.class).stream()
        .map(SessionEvent.KnobContact::what)
        .toList();
  }

  private void foil(boolean touches, double seconds) {
    bench.edge(Channel.KNOB, touches, seconds);
  }

  @Test
  void whatTheFoilDoesBeforeAndAfterStandsBesideTheFiring() {
    foil(true, bench.now);
    bench.pass(2);
    foil(false, bench.now - 0.2);
    bench.fire(0.125);
    foil(true, bench.now);
    bench.pass(1);
    FiringResult only = bench.result(1);
    assertThat(bench.session.results()).hasSize(1);
    assertThat(only.outcome()).isEqualTo(Outcome.TIMED);
    assertThat(only.firing().edges()).noneMatch(edge -> edge.channel() == Channel.KNOB);
    assertThat(only.firing().knob()).extracting(Edge::high).containsExactly(true, false, true);
    assertThat(bench.news(SessionEvent.KnobAdded.class)).hasSize(1);
  }

  @Test
  void aKnobThatIsTurnedAloneIsNoFiring() {
    for (int i = 0; i < 50; i++) {
      foil(i % 2 == 0, bench.now);
      bench.now += 0.05;
    }
    bench.pass(3);
    assertThat(bench.session.results()).isEmpty();
    assertThat(bench.session.isQuiet()).isTrue();
  }

  @Test
  void aPressAndItsLateLightKeepTheKnobOfBoth() {
    foil(true, bench.now);
    bench.pass(1);
    bench.press();
    bench.now += 0.4;
    foil(false, bench.now);
    bench.pass(2);
    bench.fire(0.125);
    assertThat(bench.session.results()).hasSize(1);
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(bench.result(1).firing().knob()).extracting(Edge::high).containsExactly(true, false);
  }

  @Test
  void aContactThatNeverOpensIsNamedWhereTheWindTurned() {
    foil(true, bench.now);
    bench.pass(2);
    bench.fire(0.125);
    bench.pass(2);
    press(LinkageStep.SQUEEZE, WindState.LOCKED);
    assertThat(said()).isEmpty();
    bench.fire(0.125);
    bench.pass(2);
    press(LinkageStep.SQUEEZE, WindState.TURNS);
    assertThat(said()).containsExactly(KnobTrouble.NEVER_OPENED);
  }

  @Test
  void aContactThatOpensOrIsNotWiredIsNotNamed() {
    bench.fire(0.125);
    bench.pass(2);
    press(LinkageStep.SQUEEZE, WindState.TURNS);
    foil(true, bench.now);
    bench.pass(2);
    foil(false, bench.now);
    bench.fire(0.125);
    bench.pass(2);
    press(LinkageStep.SQUEEZE, WindState.TURNS);
    assertThat(said()).isEmpty();
  }

  @Test
  void aRigWithoutTheInputIsNamedOnceWhenTheLinkageIsChosen() {
    assertThat(said()).isEmpty();
    bench.handle(new SessionInput.RigIs("R-0003", 1, BoardTraits.USUAL, "1.1.0"));
    bench.handle(new SessionInput.SpeedChosen(InventedBench.S8));
    assertThat(said()).isEmpty();
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
    bench.handle(new SessionInput.SpeedChosen(InventedBench.S8));
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
    assertThat(said()).containsExactly(KnobTrouble.NOT_ON_THIS_RIG);
  }

  @Test
  void whatTheContactNeverSaidIsKnownFromABeatToo() {
    bench.handle(new SessionInput.BeatAt(InventedBench.RATE.ticks(bench.now), 0x80));
    bench.fire(0.125);
    press(LinkageStep.TAP, WindState.TURNS);
    assertThat(said()).containsExactly(KnobTrouble.NEVER_OPENED);
  }
}
