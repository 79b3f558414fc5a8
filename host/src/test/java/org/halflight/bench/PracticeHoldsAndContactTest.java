package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.halflight.exposure.Exposure;
import org.halflight.extratest.BulbClass;
import org.halflight.extratest.ContactShot;
import org.halflight.extratest.ContactShot.Flash;
import org.halflight.extratest.ContactShot.How;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.FlashContact;
import org.halflight.extratest.Holds;
import org.halflight.extratest.SelfTimer;
import org.halflight.fixtures.PracticeSession;
import org.halflight.fixtures.Seeds;
import org.halflight.job.CheckState;
import org.halflight.rig.practice.PracticeFiring;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedContact;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.ModelSelfTimer;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.ContactWords;
import org.halflight.words.SelfTimerWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** B, T, self-timer and flash contact through the practice rig; the truth is that of the model. */
class PracticeHoldsAndContactTest {
  private static final long SEED = Seeds.usually(20);
  private static final List<MarkedSpeed> DIAL = InventedShutters.dial();
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");
  private static final MarkedSpeed NEXT = MarkedSpeed.parse("1/250");
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");

  @TempDir private Path folder;

  private PracticeSession session(InventedContact contact) {
    LeafShutter sound = InventedShutters.soundLeaf(DIAL, SEED);
    PracticeSession practice = new PracticeSession(folder.resolve("a.session"), sound, SEED);
    practice.rig.setShutter(sound.with(contact.model()));
    return practice;
  }

  private static FlashContact contact(PracticeSession practice) {
    AcceptanceCriteria wired = AcceptanceCriteria.USUAL.with(RunOption.CONTACT, true);
    return ExtraTests.of(
            practice.session().results(),
            List.of(),
            practice.session().runs().stream().map(run -> run.withCriteria(wired)).toList())
        .stream()
        .filter(FlashContact.class::isInstance)
        .map(FlashContact.class::cast)
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @EnumSource(InventedContact.class)
  void everyInventedContactIsFoundAsItIs(InventedContact kind) {
    try (PracticeSession practice = session(kind)) {
      practice.begin(Phase.AS_LEFT, List.of(TOP, NEXT, S60), List.of());
      List<PracticeFiring> fired = new ArrayList<>();
      for (MarkedSpeed speed : List.of(TOP, NEXT, S60)) {
        for (int i = 0; i < 3; i++) {
          fired.add(practice.fire(speed));
        }
      }
      assertThat(practice.session().results().stream().filter(r -> r.outcome() == Outcome.TIMED))
          .as("a contact of any kind costs no firing its time")
          .hasSize(fired.size());
      FlashContact found = contact(practice);
      switch (kind) {
        case PROMPT, BOUNCING, TEN_BOUNCES -> {
          assertThat(found.at(Flash.WHILE_OPEN)).contains(NEXT, S60);
          assertThat(found.state()).isEqualTo(CheckState.OK);
          assertThat(found.speeds()).allMatch(at -> at.mostBounces() == kind.model().bounces());
        }
        case LATE -> {
          assertThat(found.at(Flash.TOO_LATE)).containsExactly(TOP);
          assertThat(found.at(Flash.WHILE_OPEN)).containsExactly(S60, NEXT);
          assertThat(found.state()).isEqualTo(CheckState.FAULT);
        }
        case EARLY -> {
          assertThat(found.at(Flash.TOO_EARLY)).hasSize(3);
          assertThat(found.classes()).isEmpty();
          assertThat(found.state()).isEqualTo(CheckState.FAULT);
        }
        case FOR_BULBS -> {
          assertThat(found.at(Flash.TOO_EARLY)).hasSize(3);
          assertThat(found.classes()).contains(BulbClass.M);
          assertThat(found.state()).isEqualTo(CheckState.OK);
        }
        case CHATTERS -> {
          assertThat(found.count(How.CHATTERS)).isPositive();
          assertThat(found.state()).isEqualTo(CheckState.FAULT);
          assertThat(ContactWords.lines(found).get(0)).contains("chatters without end");
        }
        case NEVER_CLOSES -> {
          assertThat(found.count(How.NEVER)).isEqualTo(fired.size());
          assertThat(found.state()).isEqualTo(CheckState.FAULT);
          assertThat(ContactWords.lines(found).get(0)).contains("did not close in 9 of 9");
        }
        case ALWAYS_CLOSED -> assertThat(found.state()).isEqualTo(CheckState.FAULT);
      }
      if (kind.model().what() == org.halflight.shuttermodel.ModelContact.What.CLOSES) {
        closingsAreThoseOfTheModel(practice, fired, kind);
      }
    }
  }

  private static void closingsAreThoseOfTheModel(
      PracticeSession practice, List<PracticeFiring> fired, InventedContact kind) {
    List<FiringResult> results =
        practice.session().results().stream().filter(r -> r.outcome() == Outcome.TIMED).toList();
    Map<MarkedSpeed, Integer> turns = new HashMap<>();
    for (int i = 0; i < fired.size(); i++) {
      PracticeFiring truth = fired.get(i);
      Exposure.Timed timed = (Exposure.Timed) results.get(i).exposure();
      int turn = turns.merge(truth.speed(), 1, Integer::sum) - 1;
      ContactShot shot =
          contact(practice).speeds().stream()
              .filter(at -> at.speed().equals(truth.speed()))
              .findFirst()
              .orElseThrow()
              .shots()
              .get(turn);
      double afterLight =
          (timed.crossings().lowRiseTicks() - truth.firstLightTicks()) / 16e6
              + shot.closingSeconds();
      assertThat(afterLight)
          .isCloseTo(
              ((ModelFiring.Timed) truth.model()).openSeconds()
                  + kind.model().afterOpenMillis() * 1e-3,
              within(1e-6 + 4e-3 * kind.model().scatterMillis()));
    }
  }

  @Test
  void theUncleanedShutterMissesItsFastestSpeedAndItsSelfTimerIsUneven() {
    try (PracticeSession practice =
        new PracticeSession(
            folder.resolve("a.session"), InventedShutters.dirtySlowTrain(DIAL, SEED), SEED)) {
      practice.begin(Phase.AS_FOUND, List.of(TOP, S60), List.of(UntimedTest.SELF_TIMER));
      practice.fire(TOP);
      practice.fire(S60);
      List<Double> truths = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        practice.handle(new SessionInput.UntimedTestChosen(UntimedTest.SELF_TIMER));
        PracticeFiring fired = practice.rig.fireBySelfTimer().orElseThrow();
        truths.add((fired.firstLightTicks() - fired.pressTicks()) / 16e6);
        int wanted = i + 1;
        practice.until(
            () ->
                practice.tried().stream()
                    .anyMatch(t -> t instanceof SelfTimer s && s.seconds().size() == wanted));
      }
      assertThat(practice.tried(FlashContact.class).at(Flash.TOO_LATE)).containsExactly(TOP);
      SelfTimer timer = practice.tried(SelfTimer.class);
      assertThat(timer.atOnce() + timer.neverCame() + timer.withoutPress()).isZero();
      for (int i = 0; i < truths.size(); i++) {
        // The low level is crossed within the opening.
        assertThat(timer.seconds().get(i) - truths.get(i)).isBetween(0.0, 0.9e-3);
      }
      assertThat(timer.times().orElseThrow().mean().get())
          .isCloseTo(ModelSelfTimer.UNEVEN.seconds(), within(1.0));
      assertThat(timer.rangeSeconds()).isGreaterThan(0.5);
      assertThat(SelfTimerWords.lines(timer).get(0)).contains("on average over 5");
    }
  }

  @Test
  void bFollowsTheFingerAndTTheSecondPress() {
    try (PracticeSession practice = session(InventedContact.BOUNCING)) {
      practice.begin(Phase.AS_LEFT, List.of(), List.of(UntimedTest.B, UntimedTest.T));
      practice.handle(new SessionInput.UntimedTestChosen(UntimedTest.B));
      practice.rig.holdOpen(true);
      practice.rig.rest(3);
      practice.rig.holdOpen(false);
      practice.until(() -> practice.session().results().size() == 2);
      practice.handle(new SessionInput.UntimedTestChosen(UntimedTest.T));
      practice.rig.pressAtT();
      practice.rig.rest(30);
      practice.rig.pressAtT();
      practice.until(() -> practice.session().results().size() == 3);

      Holds holds = practice.tried(Holds.class);

      assertThat(holds.state()).isEqualTo(CheckState.OK);
      Holds.Shot b = holds.of(UntimedTest.B).get(0);
      Holds.Shot t = holds.of(UntimedTest.T).get(0);
      assertThat(b.outcome()).isEqualTo(Outcome.OPENS_HOLDS_CLOSES);
      assertThat(t.openSeconds().getAsDouble()).isBetween(30.0, 32.0);
      for (Holds.Shot shot : List.of(b, t)) {
        assertThat(shot.openingDelaySeconds().getAsDouble()).isCloseTo(0.06, within(2e-3));
        // 8 ms to the start of closing and 0.8 ms of closing.
        assertThat(shot.closingDelaySeconds().getAsDouble()).isCloseTo(0.0085, within(2.5e-3));
      }
    }
  }
}
