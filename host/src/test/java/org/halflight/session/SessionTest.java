package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.assertj.core.data.Offset;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class SessionTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed HUNDRED_TWENTY_FIFTH = MarkedSpeed.parse("1/125");

  private final Session session = new Session();
  private final List<SessionEvent> news = new ArrayList<>();
  private double nowSeconds = 1;

  @BeforeEach
  void rigIsThere() {
    handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    // Thresholds on the Gauss levels of a light of 20 to 820 counts.
    handle(
        new SessionInput.LightSet(
            new LightLevels(
                20, 820, 20 + 800 * LevelPair.GAUSS.low(), 20 + 800 * LevelPair.GAUSS.high())));
  }

  @Test
  void timesAnAreaLinearFiringExactly() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    fire(0.016, 0.001);
    FiringResult result = session.results().get(0);
    assertThat(result.outcome()).isEqualTo(Outcome.TIMED);
    // Area growing evenly: the two-level rule is exact but for the rounding to ticks.
    assertThat(result.effectiveSeconds().orElseThrow()).isCloseTo(0.016, Offset.offset(1.3e-7));
    // APEX: 1/60 is 1/64 s = 15.625 ms.
    assertThat(result.errorStops().orElseThrow())
        .isCloseTo(Math.log(16 / 15.625) / Math.log(2), Offset.offset(2e-5));
  }

  @Test
  void goesOnWhenASpeedHasItsFirings() {
    begin(Phase.ADJUSTING, 2, SIXTIETH, HUNDRED_TWENTY_FIFTH);
    fire(0.016, 0.001);
    assertThat(session.shown()).contains(SIXTIETH);
    fire(0.016, 0.001);
    assertThat(session.shown()).contains(HUNDRED_TWENTY_FIFTH);
    fire(0.008, 0.001);
    fire(0.008, 0.001);
    assertThat(session.isRunDone()).isTrue();
    assertThat(news).hasAtLeastOneElementOfType(SessionEvent.RunDone.class);
    assertThat(session.results()).extracting(FiringResult::number).containsExactly(1, 2, 3, 4);
  }

  @Test
  void theFirstReleaseAfterRestIsNotAveraged() {
    begin(Phase.AS_FOUND, 2, SIXTIETH);
    fire(0.030, 0.001);
    fire(0.016, 0.001);
    assertThat(session.isRunDone()).isFalse();
    fire(0.016, 0.001);
    assertThat(session.isRunDone()).isTrue();
    assertThat(session.results())
        .extracting(FiringResult::afterRest)
        .containsExactly(true, false, false);
    assertThat(session.results())
        .extracting(FiringResult::isGood)
        .containsExactly(false, true, true);
  }

  @Test
  void aRejectedFiringStaysInTheRecordAndIsAskedForAgain() {
    begin(Phase.ADJUSTING, 1, SIXTIETH, HUNDRED_TWENTY_FIFTH);
    fire(0.016, 0.001);
    assertThat(session.shown()).contains(HUNDRED_TWENTY_FIFTH);
    handle(new SessionInput.LastRejected("knocked the bench"));
    assertThat(session.shown()).contains(SIXTIETH);
    assertThat(session.results()).hasSize(1);
    assertThat(session.results().get(0).rejection()).contains("knocked the bench");
    assertThat(session.results().get(0).firing().edges()).hasSize(4);
  }

  @Test
  void tenTriesAreEnough() {
    begin(Phase.ADJUSTING, 3, SIXTIETH, HUNDRED_TWENTY_FIFTH);
    for (int i = 0; i < Session.ENOUGH_TRIES; i++) {
      releaseWithoutLight();
    }
    assertThat(news).contains(new SessionEvent.EnoughToKnow(SIXTIETH, Session.ENOUGH_TRIES, 0));
    assertThat(session.shown()).contains(HUNDRED_TWENTY_FIFTH);
    assertThat(session.results())
        .extracting(FiringResult::outcome)
        .containsOnly(Outcome.DID_NOT_OPEN);
  }

  @Test
  void aSoundAloneIsNoShutterEvent() {
    begin(Phase.ADJUSTING, 1, SIXTIETH);
    edge(Channel.CLICK, true, nowSeconds);
    edge(Channel.CLICK, false, nowSeconds + 0.002);
    quiet(nowSeconds + 0.002);
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.NOT_A_SHUTTER_EVENT);
    assertThat(session.isRunDone()).isFalse();
  }

  @Test
  void aShutterClosedByHandIsStuckOpenWithALowerLimit() {
    begin(Phase.ADJUSTING, 1, SIXTIETH);
    double opened = nowSeconds;
    edge(Channel.CENTRE_LOW, true, opened);
    edge(Channel.CENTRE_HIGH, true, opened + 0.001);
    beat(opened + 3, 0b11);
    assertThat(news).hasAtLeastOneElementOfType(SessionEvent.StillOpen.class);
    handle(new SessionInput.ClosedByHand());
    edge(Channel.CENTRE_HIGH, false, opened + 3.1);
    edge(Channel.CENTRE_LOW, false, opened + 3.2);
    quiet(opened + 3.2);
    FiringResult result = session.results().get(0);
    assertThat(result.outcome()).isEqualTo(Outcome.STUCK_OPEN);
    assertThat(((Exposure.StuckOpen) result.exposure()).lowestSeconds())
        .isCloseTo(3.2, Offset.offset(1e-6));
  }

  @Test
  void damageMakesAFiringUnusableAndTheNextIsGood() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    double opened = nowSeconds;
    edge(Channel.CENTRE_LOW, true, opened);
    handle(new SessionInput.Damaged(Firing.Damage.EDGES_LOST));
    edge(Channel.CENTRE_LOW, false, opened + 0.016);
    quiet(opened + 0.016);
    fire(0.016, 0.001);
    assertThat(session.results())
        .extracting(FiringResult::outcome)
        .containsExactly(Outcome.UNUSABLE, Outcome.TIMED);
  }

  @Test
  void holdingTheShutterOpenForTheLightIsNoRelease() {
    begin(Phase.AS_FOUND, 1, SIXTIETH);
    handle(new SessionInput.LightBeingSet(true));
    edge(Channel.CENTRE_LOW, true, nowSeconds);
    edge(Channel.CENTRE_HIGH, true, nowSeconds + 0.001);
    beat(nowSeconds + 3, 0b11);
    handle(new SessionInput.LightBeingSet(false));
    edge(Channel.CENTRE_HIGH, false, nowSeconds + 4);
    edge(Channel.CENTRE_LOW, false, nowSeconds + 4.001);
    quiet(nowSeconds + 4.001);
    fire(0.020, 0.001);
    fire(0.016, 0.001);
    assertThat(news).doesNotHaveAnyElementsOfTypes(SessionEvent.StillOpen.class);
    assertThat(session.results())
        .extracting(FiringResult::outcome)
        .containsExactly(Outcome.HELD_FOR_LIGHT, Outcome.TIMED, Outcome.TIMED);
    // The first release after rest is the first release, not the holding.
    assertThat(session.results())
        .extracting(FiringResult::afterRest)
        .containsExactly(false, true, false);
    assertThat(session.isRunDone()).isTrue();
  }

  @Test
  void aLightSettingThatWasGivenUpDoesNotSwallowWhatComesLater() {
    handle(new SessionInput.LightBeingSet(true));
    nowSeconds += 1;
    beat(nowSeconds, 0);
    begin(Phase.ADJUSTING, 1, SIXTIETH);
    nowSeconds += 1;
    fire(0.016, 0.001);
    assertThat(session.results()).extracting(FiringResult::outcome).containsExactly(Outcome.TIMED);
  }

  @Test
  void aRestartWithoutAGreetingStartsTheTicksAnew() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    nowSeconds = 1000;
    fire(0.016, 0.001);
    handle(new SessionInput.Damaged(Firing.Damage.RIG_RESTARTED));
    nowSeconds = 1;
    beat(nowSeconds, 0);
    nowSeconds += 0.3;
    edge(Channel.CONTACT, true, nowSeconds - 0.01);
    edge(Channel.CONTACT, false, nowSeconds + 0.1);
    fire(0.016, 0.001);
    assertThat(session.results())
        .extracting(FiringResult::outcome)
        .containsExactly(Outcome.TIMED, Outcome.TIMED);
  }

  @Test
  void linesLostWhileAPressWaitsForItsLightTakeTheVerdictBack() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    beat(nowSeconds - 0.5, 0);
    releaseWithoutLight();
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.DID_NOT_OPEN);
    // The self-timer runs on, and its light may be in what is lost.
    nowSeconds += 5;
    beat(nowSeconds, 0);
    handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(news).anyMatch(SessionEvent.Changed.class::isInstance);
  }

  @Test
  void linesLostLongAfterAPressLeaveItAsItIs() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    beat(nowSeconds - 0.5, 0);
    releaseWithoutLight();
    nowSeconds += 31;
    beat(nowSeconds, 0);
    handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST));
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.DID_NOT_OPEN);
  }

  @Test
  void aContradictionReachesBackToAFiringThatIsSettled() {
    begin(Phase.ADJUSTING, 2, SIXTIETH);
    long before = RATE.ticks(nowSeconds - 0.3);
    fire(0.016, 0.001);
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.TIMED);
    handle(new SessionInput.Damaged(Firing.Damage.CONTRADICTION, OptionalLong.of(before)));
    assertThat(session.results().get(0).outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(session.results().get(0).firing().damage())
        .containsExactly(Firing.Damage.CONTRADICTION);
    assertThat(session.goodAt(SIXTIETH)).isZero();
  }

  @Test
  void theLightOfOneRigIsNotUsedForAnother() {
    handle(new SessionInput.RigIs("R-0002", 1, BoardTraits.USUAL, ""));
    assertThat(session.light()).isEmpty();
    begin(Phase.ADJUSTING, 1, SIXTIETH);
    fire(0.016, 0.001);
    assertThat(session.results().get(0).levels()).isEmpty();
  }

  @Test
  void theSameEdgesTwiceMakeOneFiring() {
    begin(Phase.ADJUSTING, 5, SIXTIETH);
    double start = nowSeconds;
    fire(0.016, 0.001);
    handle(new SessionInput.LinkLost());
    nowSeconds = start;
    fire(0.016, 0.001);
    assertThat(session.results()).hasSize(1);
  }

  @Test
  void withoutALightTheFigureSaysThatItsLevelsAreUnknown() {
    Session blind = new Session();
    blind.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    blind.handle(edgeAt(Channel.CENTRE_LOW, true, 1));
    blind.handle(edgeAt(Channel.CENTRE_HIGH, true, 1.001));
    blind.handle(edgeAt(Channel.CENTRE_HIGH, false, 1.015));
    blind.handle(edgeAt(Channel.CENTRE_LOW, false, 1.016));
    blind.handle(new SessionInput.Ends());
    assertThat(blind.results().get(0).levels()).isEqualTo(Optional.empty());
    assertThat(blind.results().get(0).shown()).isEmpty();
  }

  private void begin(Phase phase, int firings, MarkedSpeed... speeds) {
    handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented camera", phase, Dial.CUSTOM, List.of(speeds), Reference.EXACT, firings)));
  }

  /** A firing with straight ramps of one length each, of an effective time. */
  private void fire(double effectiveSeconds, double rampSeconds) {
    double start = nowSeconds;
    double low = LevelPair.GAUSS.low() * rampSeconds;
    double high = LevelPair.GAUSS.high() * rampSeconds;
    double end = start + effectiveSeconds + rampSeconds;
    edge(Channel.CENTRE_LOW, true, start + low);
    edge(Channel.CENTRE_HIGH, true, start + high);
    edge(Channel.CENTRE_HIGH, false, end - high);
    edge(Channel.CENTRE_LOW, false, end - low);
    quiet(end);
  }

  private void releaseWithoutLight() {
    edge(Channel.RELEASE, true, nowSeconds);
    edge(Channel.RELEASE, false, nowSeconds + 0.1);
    quiet(nowSeconds + 0.1);
  }

  private void quiet(double fromSeconds) {
    nowSeconds = fromSeconds + 0.6;
    beat(nowSeconds, 0);
    nowSeconds += 0.1;
  }

  private void beat(double seconds, int levels) {
    handle(new SessionInput.BeatAt(RATE.ticks(seconds), levels));
  }

  private void edge(Channel channel, boolean high, double seconds) {
    handle(edgeAt(channel, high, seconds));
  }

  private static SessionInput edgeAt(Channel channel, boolean high, double seconds) {
    return new SessionInput.EdgeAt(new Edge(channel, high, RATE.ticks(seconds)));
  }

  private void handle(SessionInput input) {
    news.addAll(session.handle(input));
  }
}
