package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.session.SessionEvent.NotDone;
import org.halflight.session.SessionEvent.NotDone.Why;
import org.halflight.session.SessionInput.PressJudged;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Wind keys and the firings that belong to them. */
class LinkagePressesTest {
  private final InventedBench bench = new InventedBench();

  @BeforeEach
  void theLinkageIsLed() {
    bench.begin(
        InventedBench.setup(
            Phase.ADJUSTING,
            5,
            List.of(InventedBench.S8),
            List.of(UntimedTest.LINKAGE, UntimedTest.B),
            CameraCustoms.NONE));
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
  }

  @Test
  void aPressHasTheFiringsSinceTheKeyBefore() {
    key(LinkageStep.REST, WindState.LOCKED);
    bench.fire(InventedBench.S8, 0);
    key(LinkageStep.STOP, WindState.TURNS);
    bench.pass(2);
    key(LinkageStep.STOP, WindState.LOCKED);
    bench.fire(InventedBench.S8, 0);
    bench.fire(InventedBench.S8, 0);
    key(LinkageStep.TAP, WindState.TURNS);

    assertThat(presses()).extracting(LinkagePress::trips).containsExactly(0, 1, 0, 2);
    assertThat(presses()).extracting(LinkagePress::number).containsExactly(1, 2, 3, 4);
    assertThat(presses()).allMatch(LinkagePress::counts).allMatch(p -> p.run() == 1);
    assertThat(bench.news(SessionEvent.PressCounted.class)).hasSize(4);
    assertThat(bench.session.goodAt(InventedBench.S8)).isZero();
  }

  @Test
  void firingsFromBeforeTheLinkageBelongToNoPress() {
    bench.handle(new SessionInput.SpeedChosen(InventedBench.S8));
    bench.fire(InventedBench.S8, 0);
    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
    key(LinkageStep.STOP, WindState.LOCKED);

    assertThat(presses().get(0).firings()).isEmpty();
  }

  @Test
  void aReleaseWithoutLightDidNotTripAndLaterLightIsAnotherPress() {
    bench.releaseWithoutLight();
    key(LinkageStep.STOP, WindState.TURNS);
    bench.fire(InventedBench.S8, 0);
    bench.pass(2);
    key(LinkageStep.STOP, WindState.TURNS);

    assertThat(presses()).extracting(LinkagePress::trips).containsExactly(0, 1);
  }

  @Test
  void aWindKeyOutsideTheLinkageIsAnsweredAndChangesNothing() {
    bench.handle(new SessionInput.SpeedChosen(InventedBench.S8));
    key(LinkageStep.STOP, WindState.TURNS);

    assertThat(presses()).isEmpty();
    assertThat(whys()).containsExactly(Why.NO_LINKAGE_TEST);
  }

  @Test
  void aKeyTwiceWithinASecondCountsOnce() {
    bench.fire(InventedBench.S8, 0);
    key(LinkageStep.STOP, WindState.TURNS);
    bench.pass(0.5);
    key(LinkageStep.STOP, WindState.TURNS);
    assertThat(presses()).hasSize(1);
    assertThat(whys()).containsExactly(Why.PRESS_COUNTED_ALREADY);

    bench.pass(1);
    key(LinkageStep.STOP, WindState.LOCKED);
    assertThat(presses()).as("later it is a press that did nothing").hasSize(2);
  }

  @Test
  void aKeyWhileTheShutterIsOpenWaitsForItsFiring() {
    bench.edge(Channel.CENTRE_LOW, true, bench.now);
    bench.edge(Channel.CENTRE_HIGH, true, bench.now + 0.001);
    bench.pass(3);
    key(LinkageStep.SQUEEZE, WindState.TURNS);
    key(LinkageStep.SQUEEZE, WindState.LOCKED);
    assertThat(presses()).isEmpty();
    assertThat(whys()).containsExactly(Why.PRESS_UNDER_WAY);

    bench.edge(Channel.CENTRE_HIGH, false, bench.now);
    bench.edge(Channel.CENTRE_LOW, false, bench.now + 0.001);
    bench.quiet();
    assertThat(presses()).hasSize(1);
    assertThat(presses().get(0).wind()).isEqualTo(WindState.TURNS);
    assertThat(presses().get(0).trips()).isEqualTo(1);
  }

  @Test
  void aShutterThatHangsHasTripped() {
    bench.light(20, 0.01);
    bench.quiet();
    bench.handle(new SessionInput.ClosedByHand());
    key(LinkageStep.TAP, WindState.TURNS);

    assertThat(presses().get(0).firings().get(0).outcome()).isEqualTo(Outcome.STUCK_OPEN);
    assertThat(presses().get(0).trips()).isEqualTo(1);
  }

  @Test
  void aFiringTakenBackBeforeTheKeyIsOfNoPressAndAfterItTakesThePressAlong() {
    bench.fire(InventedBench.S8, 0);
    bench.handle(new SessionInput.FiringRejected(bench.result(1).key(), "slipped"));
    key(LinkageStep.STOP, WindState.LOCKED);
    assertThat(presses().get(0).firings()).isEmpty();

    bench.fire(InventedBench.S8, 0);
    key(LinkageStep.STOP, WindState.TURNS);
    bench.handle(new SessionInput.FiringRejected(bench.result(2).key(), "slipped"));
    assertThat(presses().get(1).counts()).isFalse();
  }

  @Test
  void whereLightMayHaveBeenLostThePressDoesNotCount() {
    bench.press();
    bench.handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    bench.now += 0.1;
    bench.letGo();
    bench.quiet();
    key(LinkageStep.SQUEEZE, WindState.TURNS);

    assertThat(presses().get(0).counts()).isFalse();
  }

  @Test
  void aSlowSqueezeIsNoSelfTimerAndNoReleaseDelay() {
    bench.press();
    bench.pass(4);
    bench.light(0.125, 0.001);
    bench.letGo();
    bench.quiet();

    FiringResult squeezed = bench.result(1);
    assertThat(squeezed.releaseDelaySeconds().orElseThrow()).isGreaterThan(3.5);
    assertThat(squeezed.countedDelaySeconds()).isEmpty();
    assertThat(bench.news(SessionEvent.IsTheSelfTimerOn.class)).isEmpty();
  }

  @Test
  void whatNobodySawIsNoPressWithoutLight() {
    bench.handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    key(LinkageStep.SQUEEZE, WindState.TURNS);
    bench.pass(2);
    bench.handle(new SessionInput.LinkLost());
    key(LinkageStep.SQUEEZE, WindState.TURNS);
    bench.pass(2);
    bench.handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    bench.handle(new SessionInput.EdgesCounted(true));
    key(LinkageStep.SQUEEZE, WindState.TURNS);
    bench.handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    bench.pass(2);
    bench.fire(InventedBench.S8, 0);
    key(LinkageStep.SQUEEZE, WindState.TURNS);

    assertThat(presses())
        .extracting(LinkagePress::counts)
        .containsExactly(false, false, true, true);
  }

  @Test
  void theTestIsDoneWithItsLastPressAndARestCheckBeginsANewRound() {
    key(LinkageStep.REST, WindState.LOCKED);
    for (LinkageStep step : List.of(LinkageStep.STOP, LinkageStep.SQUEEZE, LinkageStep.TAP)) {
      for (int i = 0; i < step.presses(); i++) {
        assertThat(bench.session.untimedTest()).contains(UntimedTest.LINKAGE);
        bench.fire(InventedBench.S8, 0);
        key(step, WindState.TURNS);
      }
    }
    assertThat(presses()).hasSize(LinkageStep.PRESSES);
    assertThat(LinkagePress.lastRound(presses())).hasSize(LinkageStep.PRESSES);

    bench.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
    bench.pass(2);
    key(LinkageStep.REST, WindState.LOCKED);
    assertThat(LinkagePress.lastRound(presses())).hasSize(1);
  }

  @Test
  void thePlungerIsKeptWithItsRun() {
    bench.handle(new SessionInput.PlungerRead(new PlungerReading(1.3, 1.45)));

    assertThat(bench.session.plungers()).hasSize(1);
    assertThat(bench.session.plungers().get(0).run()).isEqualTo(1);
    assertThat(bench.session.plungers().get(0).reading().gapMm()).isEqualTo(0.15, offset());
  }

  private static org.assertj.core.data.Offset<Double> offset() {
    return org.assertj.core.data.Offset.offset(1e-9);
  }

  private void key(LinkageStep step, WindState wind) {
    bench.handle(new PressJudged(step, wind));
  }

  private List<LinkagePress> presses() {
    return bench.session.presses();
  }

  private List<Why> whys() {
    return bench.news(NotDone.class).stream().map(NotDone::why).toList();
  }
}
