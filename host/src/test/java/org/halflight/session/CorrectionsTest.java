package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class CorrectionsTest {
  private static final MarkedSpeed S60 = InventedBench.S60;
  private static final MarkedSpeed S125 = InventedBench.S125;

  private final PartsOfASession parts = new PartsOfASession();
  private FiringResult fired;

  @BeforeEach
  void fire() {
    parts.progress.begin(
        new RunSetup("", Phase.AS_LEFT, "leaf", List.of(S60, S125), Reference.EXACT, 1),
        parts.events);
    fired = parts.fire(1, 1 / 64.0);
    parts.progress.goOn(parts.events);
    assertThat(parts.progress.shown().flatMap(DialSetting::speed)).contains(S125);
  }

  private FiringResult now() {
    return parts.log.find(fired.key()).orElseThrow();
  }

  @Test
  void theSpeedOfARejectedFiringIsShownAgainAndItIsRejectedOnce() {
    parts.corrections.reject(fired.key(), "slipped", parts.events);
    parts.corrections.rejectLast("again", parts.events);
    assertThat(now().rejection()).contains("slipped");
    assertThat(parts.events(SessionEvent.Rejected.class)).hasSize(1);
    assertThat(parts.corrections.toReject()).isEmpty();
    assertThat(parts.progress.shown().flatMap(DialSetting::speed)).contains(S60);
  }

  @Test
  void theReasonOfARejectedFiringIsChangedAndTheFirstOneKept() {
    parts.corrections.changeReason(fired.key(), "counted", parts.events);
    assertThat(parts.events(SessionEvent.ReasonChanged.class)).isEmpty();
    parts.corrections.reject(fired.key(), "no reason given", parts.events);
    parts.corrections.changeReason(fired.key(), "slipped", parts.events);
    parts.corrections.changeReason(fired.key(), "camera slipped", parts.events);
    assertThat(now().rejection()).contains("camera slipped");
    assertThat(now().notes().firstReason()).contains("no reason given");
    assertThat(parts.events(SessionEvent.ReasonChanged.class)).hasSize(2);
    parts.corrections.changeReason(fired.key(), "no reason given", parts.events);
    assertThat(now().notes().firstReason()).isEmpty();
  }

  @Test
  void aMovedFiringCountsWhereItIsNow() {
    parts.corrections.move(new SessionInput.FiringsMoved(List.of(fired.key()), S125), parts.events);
    assertThat(now().shown()).contains(S125);
    assertThat(now().notes().movedFrom()).contains(S60);
    assertThat(parts.progress.goodAt(new DialSetting.Speed(S60))).isZero();
    assertThat(parts.progress.shown().flatMap(DialSetting::speed)).contains(S60);
  }

  @Test
  void damageIsTakenOnceAndLeavesNoTime() {
    parts.corrections.damage(fired, Firing.Damage.LINES_LOST, parts.events);
    parts.corrections.damage(now(), Firing.Damage.LINES_LOST, parts.events);
    assertThat(now().outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(parts.events(SessionEvent.Changed.class)).hasSize(1);
  }

  @Test
  void onlyALongOpeningWasClosedByHand() {
    parts.corrections.closedByHand(parts.events);
    assertThat(now().outcome()).isEqualTo(Outcome.TIMED);
    fired = parts.fire(2, 2.5);
    parts.corrections.closedByHand(parts.events);
    assertThat(now().outcome()).isEqualTo(Outcome.STUCK_OPEN);
  }
}
