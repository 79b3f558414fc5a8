package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A foot on the pedal, without a window and by a clock that the test turns. */
class PedalTest {
  private static final Pedal.Key F13 = new Pedal.Key(61440, 1);
  private static final Pedal.Key PAUSE = new Pedal.Key(19, 1);
  private static final MarkedSpeed THIRTIETH = MarkedSpeed.parse("1/30");
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  private PracticeWork work;
  private long nanos;
  private Pedal pedal;
  private UserAction place = UserAction.TO_BENCH;
  private final List<UserAction> done = new ArrayList<>();
  private Optional<MarkedSpeed> dial = Optional.empty();
  private PracticeMishap mishap = PracticeMishap.NONE;

  @BeforeEach
  void begin(@TempDir Path folder) {
    work = new PracticeWork(folder);
    pedal = new Pedal(() -> nanos, Map.of(Pedal.Use.GO, F13));
    pedal.sees(work.view(), place);
  }

  @AfterEach
  void end() {
    work.close();
  }

  @Test
  void aKeyIsLearntByPressingItAndForgottenAgain() {
    pedal.forget();
    assertThat(pedal.use(F13)).isEmpty();
    pedal.learn(Pedal.Use.GO);
    assertThat(pedal.lesson(new Pedal.Key(32, 1), true)).isEqualTo(Pedal.Lesson.HAS_A_MEANING);
    assertThat(pedal.lesson(new Pedal.Key(0, 1), false)).isEqualTo(Pedal.Lesson.HAS_NO_NUMBER);
    assertThat(pedal.learning()).as("until a key will do").contains(Pedal.Use.GO);
    assertThat(pedal.lesson(F13, false)).isEqualTo(Pedal.Lesson.LEARNT);
    assertThat(pedal.learning()).isEmpty();
    assertThat(pedal.use(F13)).contains(Pedal.Use.GO);

    pedal.learn(Pedal.Use.BACK);
    assertThat(pedal.lesson(F13, false)).isEqualTo(Pedal.Lesson.IS_THE_OTHER);
    assertThat(pedal.lesson(PAUSE, false)).isEqualTo(Pedal.Lesson.LEARNT);
    assertThat(pedal.learnt()).isEqualTo(Map.of(Pedal.Use.GO, F13, Pedal.Use.BACK, PAUSE));
    pedal.learn(Pedal.Use.GO);
    assertThat(pedal.lesson(F13, false)).as("the same once more").isEqualTo(Pedal.Lesson.LEARNT);
    for (Pedal.Lesson lesson : Pedal.Lesson.values()) {
      assertThat(Words.of("desk.pedal.lesson", lesson, "F13")).doesNotContain("{");
    }
  }

  @Test
  void aNewQuestionIsNotHeardForASecondAndThenGetsTheAnswerThatChangesNothing() {
    work.begin(Phase.AS_LEFT, 3, "1/30", "1/60");
    for (int i = 0; i < 3; i++) {
      work.fire();
    }
    pedal.sees(work.view(), place);
    assertThat(pedal.isHeard()).as("firing asks nothing").isTrue();
    pedal.sees(work.fire(Optional.of(THIRTIETH), PracticeMishap.NONE), place);
    assertThat(work.view().question()).isPresent();
    assertThat(pedal.isHeard()).isFalse();
    nanos += Pedal.UNREAD_NANOS - 1;
    pedal.sees(work.view(), place);
    assertThat(pedal.isHeard()).isFalse();
    nanos++;
    assertThat(pedal.isHeard()).isTrue();

    pedal.sees(work.fire(Optional.of(THIRTIETH), PracticeMishap.NONE), place);
    assertThat(work.view().question().orElseThrow().firings()).hasSize(2);
    assertThat(pedal.isHeard()).as("one that joins is no new question").isTrue();

    assertThat(Proposal.of(work.view())).contains(UserAction.ACCEPT);
    List<?> before = List.copyOf(work.view().results());
    press();
    assertThat(work.view().question()).isEmpty();
    assertThat(work.view().results()).isEqualTo(before);
  }

  @Test
  void whatIsAskedWhereNobodySeesItIsNotAnswered() {
    work.begin(Phase.AS_LEFT, 1, "1/30", "1/60");
    work.fire();
    work.fire(Optional.of(THIRTIETH), PracticeMishap.NONE);
    assertThat(work.view().question()).isPresent();
    assertThat(Proposal.elsewhere(work.view())).isEqualTo(UserAction.TO_BENCH);
    nanos += Pedal.UNREAD_NANOS;
    pedal.sees(work.view(), UserAction.TO_CAMERA);
    nanos += Pedal.UNREAD_NANOS;
    pedal.sees(work.view(), UserAction.TO_BENCH);
    assertThat(pedal.isHeard()).as("the screen is new").isFalse();
  }

  /**
   * As found and as left, with a dial forgotten and a shutter that hangs, and nothing but a foot.
   */
  @Test
  void aWholeSessionByPedalAlone() {
    pressUntil(() -> work.view().setup().isPresent());
    assertThat(work.view().light().set()).isPresent();
    assertThat(done).containsSubsequence(UserAction.TO_LIGHT, UserAction.TO_RUN);

    pressUntil(() -> work.view().shown().flatMap(its -> its.speed()).equals(Optional.of(SIXTIETH)));
    dial = Optional.of(THIRTIETH);
    press();
    assertThat(work.view().question()).isPresent();
    dial = Optional.empty();
    press();
    assertThat(work.view().question()).isEmpty();

    mishap = PracticeMishap.HANG;
    press();
    mishap = PracticeMishap.NONE;
    work.until(() -> work.view().openSeconds().isPresent());
    press();
    assertThat(done).endsWith(UserAction.FIRE, UserAction.CLOSED_BY_HAND);
    assertThat(work.cues).contains(Cue.OPEN);

    pressUntil(() -> work.view().runDone() && work.view().run() == 1);
    pressUntil(() -> work.view().runDone() && work.view().run() == 2);
    assertThat(work.view().results())
        .allMatch(firing -> firing.rejection().isEmpty())
        .allMatch(firing -> firing.notes().movedFrom().isEmpty())
        .anyMatch(firing -> firing.outcome() == Outcome.STUCK_OPEN)
        .hasSizeGreaterThanOrEqualTo(9);
  }

  @Test
  void theKeyBarShowsThePedalBesideTheKeyWhoseWorkItDoes() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    assertThat(KeyHints.withPedal(work.view()))
        .filteredOn(hint -> hint.act() == UserAction.FIRE)
        .singleElement()
        .satisfies(hint -> assertThat(hint.key()).isEqualTo("F or pedal"));
    assertThat(KeyHints.of(work.view())).noneMatch(hint -> hint.key().contains("pedal"));
  }

  private void pressUntil(java.util.function.BooleanSupplier holds) {
    for (int i = 0; i < 60 && !holds.getAsBoolean(); i++) {
      press();
    }
    assertThat(holds.getAsBoolean()).as("after %s", done).isTrue();
  }

  /** Does by pedal what the window would do, once what is asked has been read. */
  private void press() {
    pedal.sees(work.view(), place);
    nanos += Pedal.UNREAD_NANOS;
    assertThat(pedal.isHeard()).isTrue();
    if (place == UserAction.TO_LIGHT && work.view().light().set().isEmpty()) {
      setLight();
      return;
    }
    if (place == UserAction.TO_RUN) {
      work.begin(work.view().run() == 0 ? Phase.AS_FOUND : Phase.AS_LEFT, 2, "1/30", "1/60");
      place = UserAction.TO_BENCH;
      return;
    }
    UserAction act =
        place == UserAction.TO_BENCH
            ? Proposal.of(work.view()).orElseThrow()
            : Proposal.elsewhere(work.view());
    done.add(act);
    switch (act) {
      case FIRE -> fire();
      case ACCEPT -> work.handle(new SessionInput.AcceptedAsShown());
      case CLOSED_BY_HAND -> {
        work.handle(new SessionInput.ClosedByHand());
        work.rig.holdOpen(false);
        int before = work.view().results().size();
        work.until(() -> work.view().results().size() > before);
      }
      case TO_LIGHT, TO_RUN, TO_BENCH -> place = act;
      default -> throw new AssertionError("nothing for a foot: " + act);
    }
  }

  private void fire() {
    if (mishap == PracticeMishap.HANG) {
      work.fireOnly(work.view().shown().flatMap(its -> its.speed()), mishap);
    } else {
      work.fire(dial.or(() -> work.view().shown().flatMap(its -> its.speed())), mishap);
    }
  }

  private void setLight() {
    if (!work.view().light().isUnderWay()) {
      work.light.set();
      work.until(() -> work.view().light().isAsking());
    } else {
      work.rig.holdOpen(true);
      work.light.answer(Answer.DONE);
      work.until(() -> !work.view().light().isUnderWay());
      work.rig.holdOpen(false);
    }
  }
}
