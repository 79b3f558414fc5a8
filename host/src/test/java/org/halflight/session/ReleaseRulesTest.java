package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.session.InventedBench.S60;

import java.util.List;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.halflight.exposure.Exposure;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

/** Releases, late light, B and T, and shutters that hang. */
class ReleaseRulesTest {
  private final InventedBench bench = new InventedBench();

  @Test
  void theDelayGoesFromPressToFirstLight() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.press();
    bench.now += 0.030;
    bench.fire(S60, 0);
    FiringResult result = bench.result(1);
    // 30 ms, and a ramp of an eighth of 1/64 s up to the low level at 0.2113 of full light.
    assertThat(result.releaseDelaySeconds().orElseThrow())
        .isCloseTo(0.030 + 0.2113 / 512, Offset.offset(1e-6));
    assertThat(result.countedDelaySeconds()).isEqualTo(result.releaseDelaySeconds());
    assertThat(bench.news(SessionEvent.IsTheSelfTimerOn.class)).isEmpty();
  }

  @Test
  void lettingGoOfTheReleaseAfterwardsIsNoRelease() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.press();
    bench.now += 0.030;
    bench.fire(S60, 0);
    bench.letGo();
    bench.quiet();
    assertThat(bench.outcomes()).containsExactly(Outcome.TIMED, Outcome.NOT_A_SHUTTER_EVENT);
  }

  @Test
  void lateLightTakesThePlaceOfTheReleaseThatSeemedWithoutLight() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.press();
    bench.now += 0.1;
    bench.letGo();
    bench.pass(9.9);
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_OPEN);
    bench.fire(S60, 0);
    assertThat(bench.outcomes()).containsExactly(Outcome.TIMED);
    FiringResult result = bench.result(1);
    assertThat(result.number()).isEqualTo(1);
    assertThat(result.firing().edges()).hasSize(6);
    assertThat(result.isGood()).isTrue();
    assertThat(result.releaseDelaySeconds().orElseThrow()).isCloseTo(10, Offset.offset(0.001));
    assertThat(result.countedDelaySeconds()).isEmpty();
    assertThat(bench.news(SessionEvent.IsTheSelfTimerOn.class)).hasSize(1);
    assertThat(bench.session.goodAt(S60)).isEqualTo(1);
  }

  @Test
  void twoSecondsAreNoSelfTimerAndMoreAre() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    double toLow = 0.2113249 / 512;
    bench.press();
    bench.now += 0.1;
    bench.letGo();
    bench.pass(1.899 - toLow);
    bench.fire(S60, 0);
    bench.press();
    bench.now += 0.1;
    bench.letGo();
    bench.pass(1.901 - toLow);
    bench.fire(S60, 0);
    assertThat(bench.session.results())
        .extracting(FiringResult::isBySelfTimer)
        .containsExactly(false, true);
  }

  @Test
  void lightLongAfterAReleaseIsItsOwn() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.releaseWithoutLight();
    bench.pass(ReleaseTiming.LATEST_LIGHT_SECONDS);
    bench.fire(S60, 0);
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_OPEN, Outcome.TIMED);
    assertThat(bench.result(2).releaseDelaySeconds()).isEmpty();
  }

  @Test
  void aSecondPressLeavesTheFirstAsItWas() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.releaseWithoutLight();
    bench.press();
    bench.now += 0.02;
    bench.fire(S60, 0);
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_OPEN, Outcome.TIMED);
  }

  @Test
  void behindALensCapNoLightSaysNothing() {
    bench.begin(Phase.ADJUSTING, 1, S60);
    bench.handle(new SessionInput.LensCap(true));
    bench.releaseWithoutLight();
    bench.handle(new SessionInput.LensCap(false));
    bench.releaseWithoutLight();
    assertThat(bench.outcomes()).containsExactly(Outcome.NOT_A_SHUTTER_EVENT, Outcome.DID_NOT_OPEN);
    assertThat(bench.result(1).notes().capOn()).isTrue();
  }

  @Test
  void lightShowsThatTheCapIsOff() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.handle(new SessionInput.LensCap(true));
    bench.fire(S60, 0);
    assertThat(bench.session.isCapOn()).isFalse();
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
  }

  @Test
  void openForLongIsToldAsItGoesAndNothingTimesOut() {
    bench.begin(Phase.ADJUSTING, 1, S60);
    bench.edge(Channel.CENTRE_LOW, true, bench.now);
    bench.edge(Channel.CENTRE_HIGH, true, bench.now + 0.001);
    double opened = bench.now;
    bench.now = opened + 2;
    bench.beat();
    assertThat(bench.news(SessionEvent.StillOpen.class)).isEmpty();
    bench.now = opened + 2.1;
    bench.beat();
    assertThat(bench.news(SessionEvent.StillOpen.class).get(0).seconds())
        .isCloseTo(2.1, Offset.offset(1e-6));
    while (bench.now < opened + 3600) {
      bench.now += 0.26;
      bench.beat();
    }
    assertThat(bench.session.results()).isEmpty();
    bench.handle(new SessionInput.Ends());
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.STUCK_OPEN);
    assertThat(((Exposure.StuckOpen) bench.result(1).exposure()).lowestSeconds())
        .isCloseTo(3600, Offset.offset(0.3));
  }

  @Test
  void aSlowMarkingIsAllowedThreeTimesItsTime() {
    bench.begin(Phase.ADJUSTING, 1, MarkedSpeed.parse("1"));
    bench.edge(Channel.CENTRE_LOW, true, bench.now);
    double opened = bench.now;
    bench.now = opened + 2.9;
    bench.beat();
    assertThat(bench.news(SessionEvent.StillOpen.class)).isEmpty();
    bench.now = opened + 3.1;
    bench.beat();
    assertThat(bench.news(SessionEvent.StillOpen.class)).hasSize(1);
  }

  @Test
  void closedByHandMayBeSaidAfterwards() {
    bench.begin(Phase.ADJUSTING, 1, S60);
    bench.fire(4.0);
    assertThat(bench.session.isRunDone()).isTrue();
    bench.handle(new SessionInput.ClosedByHand());
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.STUCK_OPEN);
    assertThat(bench.result(1).effectiveSeconds()).isEmpty();
    assertThat(((Exposure.StuckOpen) bench.result(1).exposure()).lowestSeconds())
        .isBetween(3.9, 4.6);
    assertThat(bench.session.isRunDone()).isFalse();
    assertThat(bench.session.shown()).contains(S60);
  }

  @Test
  void closedByHandSaysNothingOfAShortFiring() {
    bench.begin(Phase.ADJUSTING, 1, S60);
    bench.fire(S60, 0);
    bench.handle(new SessionInput.ClosedByHand());
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
  }

  @Test
  void closedByHandBelongsToTheOpeningThatItIsSaidIn() {
    bench.begin(Phase.ADJUSTING, 5, S60);
    bench.light(0.016, 0.001);
    // The first is not settled yet when the second hangs.
    bench.now += 0.25;
    bench.edge(Channel.CENTRE_LOW, true, bench.now);
    bench.edge(Channel.CENTRE_HIGH, true, bench.now + 0.001);
    bench.now += 0.002;
    bench.handle(new SessionInput.ClosedByHand());
    bench.edge(Channel.CENTRE_HIGH, false, bench.now + 3);
    bench.edge(Channel.CENTRE_LOW, false, bench.now + 3.001);
    bench.now += 3.001;
    bench.quiet();
    assertThat(bench.outcomes()).containsExactly(Outcome.TIMED, Outcome.STUCK_OPEN);
  }

  @Test
  void bulbHoldsForAsLongAsTheReleaseIsHeld() {
    beginChecks(UntimedTest.B);
    assertThat(bench.session.untimedTest()).contains(UntimedTest.B);
    assertThat(bench.session.shown()).isEmpty();
    bench.press();
    bench.now += 0.02;
    openFor(1.0);
    assertThat(bench.outcomes()).containsExactly(Outcome.OPENS_HOLDS_CLOSES);
    assertThat(bench.result(1).untimedTest()).contains(UntimedTest.B);
    assertThat(bench.result(1).errorStops()).isEmpty();
    assertThat(bench.result(1).isGood()).isFalse();
    assertThat(bench.session.isRunDone()).isTrue();
  }

  @Test
  void bulbThatClosesWhileTheReleaseIsHeldDoesNotHold() {
    beginChecks(UntimedTest.B);
    bench.press();
    bench.now += 0.02;
    bench.fire(S60, 0);
    bench.letGo();
    bench.quiet();
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_HOLD, Outcome.NOT_A_SHUTTER_EVENT);
    assertThat(bench.session.isRunDone()).isFalse();
  }

  @Test
  void timeTakesTwoPresses() {
    beginChecks(UntimedTest.T);
    bench.press();
    bench.edge(Channel.CENTRE_LOW, true, bench.now + 0.02);
    bench.edge(Channel.CENTRE_HIGH, true, bench.now + 0.021);
    bench.now += 0.2;
    bench.letGo();
    bench.now += 5;
    bench.beat();
    bench.press();
    bench.edge(Channel.CENTRE_HIGH, false, bench.now + 0.02);
    bench.edge(Channel.CENTRE_LOW, false, bench.now + 0.021);
    bench.now += 0.1;
    bench.letGo();
    bench.quiet();
    assertThat(bench.outcomes()).containsExactly(Outcome.OPENS_HOLDS_CLOSES);
  }

  @Test
  void timeThatClosesWhenLetGoDoesNotHold() {
    beginChecks(UntimedTest.T);
    bench.press();
    bench.now += 0.02;
    openFor(1.0);
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_HOLD);
  }

  @Test
  void withoutAWiredReleaseHalfASecondHasToDo() {
    beginChecks(UntimedTest.B);
    bench.light(0.49, 0.001);
    bench.quiet();
    bench.light(0.51, 0.001);
    bench.quiet();
    assertThat(bench.outcomes()).containsExactly(Outcome.DID_NOT_HOLD, Outcome.OPENS_HOLDS_CLOSES);
  }

  @Test
  void tenTriesAreEnoughOfACheckToo() {
    beginChecks(UntimedTest.T);
    for (int i = 0; i < Session.ENOUGH_TRIES; i++) {
      bench.fire(S60, 0);
    }
    assertThat(bench.news(SessionEvent.EnoughOfUntimedTest.class))
        .containsExactly(new SessionEvent.EnoughOfUntimedTest(UntimedTest.T, Session.ENOUGH_TRIES));
    assertThat(bench.session.isRunDone()).isTrue();
  }

  @Test
  void windAndReleaseIsTriedAsOftenAsASpeedIsFired() {
    bench.begin(
        InventedBench.setup(
            Phase.ADJUSTING,
            12,
            List.of(),
            List.of(UntimedTest.WIND_AND_RELEASE, UntimedTest.RELEASE_ALONE),
            CameraCustoms.NONE));
    for (int i = 0; i < 12; i++) {
      assertThat(bench.session.untimedTest()).contains(UntimedTest.WIND_AND_RELEASE);
      bench.fire(S60, 0);
    }
    assertThat(bench.session.untimedTest()).contains(UntimedTest.RELEASE_ALONE);
    // Its time is a time, but of no marked speed.
    assertThat(bench.result(1).outcome()).isEqualTo(Outcome.TIMED);
    assertThat(bench.result(1).shown()).isEmpty();
    assertThat(bench.result(1).errorStops()).isEmpty();
    for (int i = 0; i < Session.ALONE_FIRINGS; i++) {
      bench.fire(S60, 0);
    }
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.news(SessionEvent.EnoughOfUntimedTest.class)).isEmpty();
  }

  @Test
  void windAndReleaseIsLeftOnAWord() {
    bench.begin(
        InventedBench.setup(
            Phase.ADJUSTING,
            5,
            List.of(),
            List.of(UntimedTest.WIND_AND_RELEASE, UntimedTest.B),
            CameraCustoms.NONE));
    bench.fire(S60, 0);
    bench.handle(new SessionInput.NextChosen());
    assertThat(bench.session.untimedTest()).contains(UntimedTest.B);
  }

  @Test
  void aReleaseWithoutLightIsATryOfWindAndReleaseAndNoTrial() {
    bench.begin(
        InventedBench.setup(
            Phase.ADJUSTING,
            2,
            List.of(),
            List.of(UntimedTest.WIND_AND_RELEASE),
            CameraCustoms.NONE));
    bench.releaseWithoutLight();
    bench.pass(31);
    bench.fire(S60, 0);
    assertThat(bench.session.isRunDone()).isFalse();
    bench.fire(S60, 0);
    assertThat(bench.session.isRunDone()).isTrue();
  }

  @Test
  void aGapIsNamedByTheTicksOfTheRig() {
    bench.beat();
    bench.handle(new SessionInput.LinkLost());
    bench.now += 42;
    bench.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    bench.beat();
    assertThat(bench.news(SessionEvent.LinkGap.class)).hasSize(1);
    assertThat(bench.news(SessionEvent.LinkGap.class).get(0).seconds().orElseThrow())
        .isCloseTo(42, Offset.offset(1e-6));
  }

  @Test
  void aComputerThatSleptLeavesAGapWithoutALostLink() {
    bench.beat();
    bench.now += RigOnBench.SILENCE_SECONDS;
    bench.beat();
    assertThat(bench.news(SessionEvent.LinkGap.class)).isEmpty();
    bench.now += RigOnBench.SILENCE_SECONDS + 0.001;
    bench.beat();
    assertThat(bench.news(SessionEvent.LinkGap.class)).hasSize(1);
  }

  @Test
  void aRestartLeavesAGapOfUnknownLength() {
    bench.beat();
    bench.handle(new SessionInput.Damaged(Firing.Damage.RIG_RESTARTED));
    bench.handle(new SessionInput.RigIs("R-0001", 8, BoardTraits.USUAL, ""));
    bench.now = 0.1;
    bench.beat();
    assertThat(bench.news(SessionEvent.LinkGap.class))
        .containsExactly(new SessionEvent.LinkGap(OptionalDouble.empty()));
  }

  private void beginChecks(UntimedTest... checks) {
    bench.begin(
        InventedBench.setup(Phase.ADJUSTING, 1, List.of(), List.of(checks), CameraCustoms.NONE));
  }

  /** Opens now, is let go after a time, and closes 10 ms later. */
  private void openFor(double seconds) {
    bench.edge(Channel.CENTRE_LOW, true, bench.now);
    bench.edge(Channel.CENTRE_HIGH, true, bench.now + 0.001);
    bench.now += seconds;
    bench.letGo();
    bench.edge(Channel.CENTRE_HIGH, false, bench.now + 0.009);
    bench.edge(Channel.CENTRE_LOW, false, bench.now + 0.010);
    bench.now += 0.010;
    bench.quiet();
  }
}
