package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.exposure.LevelPair;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.CameraCustoms;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.ContactWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented edges of exactly known times; straight ramps of 1 ms. */
class HoldsAndContactTest {
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");
  private static final double RAMP = 1e-3;

  private final InventedLight bench = new InventedLight();
  private double start = 5;

  private record Change(Channel channel, boolean high, double seconds) {}

  private static Change change(Channel channel, boolean high, double seconds) {
    return new Change(channel, high, seconds);
  }

  /** Light from 0 to {@code total}, and other changes, in seconds from first light. */
  private List<SessionEvent> fire(double total, Change... others) {
    double low = LevelPair.GAUSS.low() * RAMP;
    double high = LevelPair.GAUSS.high() * RAMP;
    Stream<Change> light =
        total == 0
            ? Stream.of()
            : Stream.of(
                change(Channel.CENTRE_LOW, true, low),
                change(Channel.CENTRE_HIGH, true, high),
                change(Channel.CENTRE_HIGH, false, total - high),
                change(Channel.CENTRE_LOW, false, total - low));
    List<Change> all =
        Stream.concat(light, Stream.of(others))
            .sorted((a, b) -> Double.compare(a.seconds(), b.seconds()))
            .toList();
    for (Change each : all) {
      bench.session.handle(
          new SessionInput.EdgeAt(
              new Edge(
                  each.channel(), each.high(), InventedLight.RATE.ticks(start + each.seconds()))));
    }
    start += all.get(all.size() - 1).seconds() + 1;
    List<SessionEvent> news =
        bench.session.handle(new SessionInput.BeatAt(InventedLight.RATE.ticks(start), 0));
    start += 40;
    return news;
  }

  private <T extends ExtraTest> T tried(Class<T> kind) {
    return bench.tried().stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .findFirst()
        .orElseThrow();
  }

  private void check(UntimedTest check) {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    bench.session.handle(new SessionInput.UntimedTestChosen(check));
  }

  @Test
  void bFollowsTheFinger() {
    check(UntimedTest.B);
    fire(3.02, change(Channel.RELEASE, true, -0.01), change(Channel.RELEASE, false, 3));

    Holds.Shot shot = tried(Holds.class).shots().get(0);

    double low = LevelPair.GAUSS.low() * RAMP;
    assertThat(shot.openingDelaySeconds().getAsDouble()).isCloseTo(0.01 + low, within(1e-6));
    assertThat(shot.closingDelaySeconds().getAsDouble()).isCloseTo(0.02 - low, within(1e-6));
    assertThat(tried(Holds.class).state()).isEqualTo(CheckState.OK);
  }

  @Test
  void tOfTwentyMinutesHangsAtTheSecondPress() {
    check(UntimedTest.T);
    fire(
        1200.4,
        change(Channel.RELEASE, true, -0.01),
        change(Channel.RELEASE, false, 0.4),
        change(Channel.RELEASE, true, 1200),
        change(Channel.RELEASE, false, 1200.2));

    Holds holds = tried(Holds.class);

    double low = LevelPair.GAUSS.low() * RAMP;
    assertThat(holds.shots().get(0).openSeconds().getAsDouble())
        .isCloseTo(1200.4 - 2 * low, within(1e-6));
    assertThat(holds.shots().get(0).hangs()).isTrue();
    assertThat(holds.state()).isEqualTo(CheckState.FAULT);
  }

  @Test
  void theSelfTimerRunsOffOrWasNotOn() {
    check(UntimedTest.SELF_TIMER);
    fire(0.016, change(Channel.RELEASE, true, -0.01), change(Channel.RELEASE, false, 0.1));
    fire(0, change(Channel.RELEASE, true, 0), change(Channel.RELEASE, false, 0.1));
    start += 30;
    fire(0.016, change(Channel.RELEASE, true, -10), change(Channel.RELEASE, false, -9.9));

    SelfTimer timer = tried(SelfTimer.class);

    assertThat(timer.atOnce()).isEqualTo(1);
    assertThat(timer.neverCame()).isEqualTo(1);
    assertThat(timer.seconds().get(0)).isCloseTo(10 + LevelPair.GAUSS.low() * RAMP, within(1e-6));
  }

  @Test
  void tenBouncesAreCountedAndTheFlashIsInTime() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    Change[] contact = new Change[22];
    for (int i = 0; i < 11; i++) {
      contact[2 * i] = change(Channel.CONTACT, true, 2e-3 + i * 1e-4);
      contact[2 * i + 1] = change(Channel.CONTACT, false, i == 10 ? 9e-3 : 2e-3 + i * 1e-4 + 5e-5);
    }
    fire(0.0166, contact);

    FlashContact.AtSpeed at = tried(FlashContact.class).speeds().get(0);

    assertThat(at.mostBounces()).isEqualTo(10);
    assertThat(at.flash()).isEqualTo(ContactShot.Flash.WHILE_OPEN);
    assertThat(at.shots().get(0).durationSeconds()).isCloseTo(7e-3, within(1e-6));
  }

  private void closesAt(double seconds) {
    fire(
        0.0166,
        change(Channel.CONTACT, true, seconds),
        change(Channel.CONTACT, false, seconds + 8e-3));
  }

  @Test
  void lateInTwoOfFiveIsLate() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    for (double closing : new double[] {2e-3, 2e-3, 16e-3, 2e-3, 16e-3}) {
      closesAt(closing);
    }

    FlashContact contact = tried(FlashContact.class);

    assertThat(contact.speeds().get(0).flash()).isEqualTo(ContactShot.Flash.TOO_LATE);
    assertThat(contact.speeds().get(0).count(ContactShot.Flash.TOO_LATE)).isEqualTo(2);
    assertThat(contact.state()).isEqualTo(CheckState.FAULT);
    assertThat(ContactWords.lines(contact).get(0)).contains("Too late").contains("2 of 5");
  }

  @Test
  void anEarlyContactIsClearedByAPublishedClassOnly() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    // 5 ms early: class F, from memory. A contact for electronic flash that is so early is at
    // fault.
    closesAt(-4.2e-3);
    FlashContact early = tried(FlashContact.class);
    assertThat(early.classes()).containsExactly(BulbClass.F);
    assertThat(early.state()).isEqualTo(CheckState.FAULT);
    assertThat(ContactWords.lines(early).get(0)).contains("Too early for electronic flash");
  }

  @Test
  void aContactForBulbsIsTooEarlyForElectronicFlashAndRight() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    closesAt(-15.2e-3);
    FlashContact bulbs = tried(FlashContact.class);
    assertThat(bulbs.classes()).contains(BulbClass.M);
    assertThat(bulbs.state()).isEqualTo(CheckState.OK);
    assertThat(ContactWords.lines(bulbs).get(0)).contains("Too early for electronic flash");
  }

  /** At X the blades are to be open, at M the contact is to be early by the delay of that class. */
  @ParameterizedTest
  @CsvSource({
    "X, -0.0152, FAULT, Too early for electronic flash, is at X",
    "X, 0.004, OK, in time, resistance",
    "M, -0.0152, OK, right for bulbs of class M, resistance",
    "M, 0.004, FAULT, is at M: adjust, resistance",
    "M, -0.0042, FAULT, is at M: adjust, resistance",
    "'', -0.0152, OK, Too early for electronic flash, class MF"
  })
  void anEarlyContactIsJudgedByTheSyncLever(
      String lever, double closing, CheckState state, String first, String second) {
    bench.session.handle(
        new SessionInput.RunBegins(
            new RunSetup("invented camera", Phase.AS_LEFT, "leaf", List.of(S60), Reference.EXACT, 3)
                .withConditions(at(lever))));
    closesAt(closing);
    FlashContact contact = tried(FlashContact.class);
    assertThat(contact.state()).isEqualTo(state);
    List<String> lines = ContactWords.lines(contact);
    assertThat(lines.get(0)).contains(first);
    assertThat(lines.get(1)).contains(second);
  }

  @Test
  void aContactThatIsRightAtOnePositionIsNotClearedAtTheOther() {
    for (String lever : List.of("X", "M")) {
      bench.session.handle(
          new SessionInput.RunBegins(
              new RunSetup(
                      "invented camera", Phase.AS_LEFT, "leaf", List.of(S60), Reference.EXACT, 3)
                  .withConditions(at(lever))));
      closesAt(-15.2e-3);
    }
    assertThat(
            MeasuredChecks.handBack(bench.tried())
                .answer(CheckItem.FLASH_CONTACT, CheckState.NOT_TESTED)
                .state())
        .isEqualTo(CheckState.FAULT);
  }

  private static RunConditions at(String lever) {
    return new RunConditions(
        OptionalDouble.empty(),
        lever.isEmpty() ? Map.of() : Map.of(RunOption.SYNC_LEVER.name(), lever));
  }

  @Test
  void aContactThatChattersForEverIsOneSentenceAndLeavesBouncesAlone() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    closesAt(2e-3);
    Change[] chatter = new Change[120];
    for (int i = 0; i < chatter.length; i++) {
      chatter[i] = change(Channel.CONTACT, i % 2 == 0, 2e-3 + 0.1 * i);
    }
    fire(0.0166, chatter);

    FlashContact contact = tried(FlashContact.class);

    assertThat(contact.count(ContactShot.How.CHATTERS)).isEqualTo(1);
    assertThat(contact.speeds().get(0).mostBounces()).isZero();
    assertThat(ContactWords.lines(contact).get(0)).contains("chatters without end in 1 of 2");
  }

  @Test
  void aContactThatNeverClosesHasItsSentence() {
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, S60);
    fire(0.0166);
    closesAt(2e-3);

    assertThat(ContactWords.lines(tried(FlashContact.class)).get(0))
        .contains("did not close in 1 of 2");
  }

  @Test
  void aWiredContactThatNeverClosesInAWholeRunIsAFault() {
    begin(true);
    fire(0.0166);
    fire(0.0166);

    FlashContact contact = tried(FlashContact.class);

    assertThat(contact.state()).isEqualTo(CheckState.FAULT);
    assertThat(ContactWords.lines(contact).get(0)).contains("did not close in 2 of 2");
  }

  @Test
  void lightWhileCockingIsNoFiringOfTheContact() {
    begin(true);
    closesAt(2e-3);
    bench.session.handle(new SessionInput.CockingLearnt(true));
    fire(0.03);
    fire(0.03);

    assertThat(tried(FlashContact.class).count(ContactShot.How.NEVER)).isZero();
    assertThat(tried(FlashContact.class).state()).isEqualTo(CheckState.OK);
  }

  @Test
  void nothingIsSaidOfAContactThatNobodyWired() {
    begin(false);
    fire(0.0166);

    assertThat(bench.tried()).noneMatch(FlashContact.class::isInstance);
  }

  @Test
  void theCautionComesOnceAndBeforeTheFirstFiring() {
    List<SessionEvent> news = new ArrayList<>(begin(true));
    news.addAll(begin(true));

    assertThat(news).filteredOn(SessionEvent.FlashContactInUse.class::isInstance).hasSize(1);
    assertThat(ContactWords.caution()).contains("Never connect a flash unit");
  }

  @Test
  void anUnannouncedContactBringsTheCautionAtItsFirstClosing() {
    begin(false);

    List<SessionEvent> first = fire(0.0166, change(Channel.CONTACT, true, 2e-3));
    List<SessionEvent> second = fire(0.0166, change(Channel.CONTACT, true, 2e-3));

    assertThat(first).hasAtLeastOneElementOfType(SessionEvent.FlashContactInUse.class);
    assertThat(second).doesNotHaveAnyElementsOfTypes(SessionEvent.FlashContactInUse.class);
  }

  private List<SessionEvent> begin(boolean contactWired) {
    return bench.session.handle(
        new SessionInput.RunBegins(
            new RunSetup("invented camera", Phase.AS_LEFT, "leaf", List.of(S60), Reference.EXACT, 3)
                .withCriteria(AcceptanceCriteria.USUAL.with(RunOption.CONTACT, contactWired))));
  }

  @Test
  void aDelayIsCalledByEveryClassThatItFits() {
    // M 13 to 19 ms, FP 15 to 20 ms: a camera maker's support article; MF 9 to 18 ms from memory.
    assertThat(BulbClass.fitting(0.016)).containsExactly(BulbClass.MF, BulbClass.M, BulbClass.FP);
    assertThat(BulbClass.fitting(0.0195)).containsExactly(BulbClass.FP);
    assertThat(BulbClass.fitting(0.022)).isEmpty();
  }
}
