package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S250;
import static org.halflight.session.InventedBench.S500;
import static org.halflight.session.InventedBench.S60;

import java.util.List;
import java.util.Optional;
import org.halflight.session.Question.Kind;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;

/** A marked speed is never inferred from a time alone. All shutters here are invented. */
class DialQuestionsTest {
  private final InventedBench bench = new InventedBench();

  @Test
  void aSlowSpeedThatLooksLikeItsNeighbourStaysWhereItWasShown() {
    bench.begin(Phase.ADJUSTING, 3, S500);
    bench.fire(S250, 0);
    bench.fire(S250, 0);
    assertThat(asked(Kind.NEIGHBOUR)).isEmpty();
    bench.fire(S250, 0);
    assertThat(asked(Kind.NEIGHBOUR))
        .containsExactly(new Question(Kind.NEIGHBOUR, S500, S250, keys(1, 3)));
    assertThat(bench.session.results())
        .allMatch(r -> r.shown().equals(Optional.of(S500)) && r.isGood());
    // It does not go on while the question is open.
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.news(SessionEvent.RunDone.class)).isEmpty();
  }

  @Test
  void acceptedAsShownTheyStayAndThePairIsNotAskedAgain() {
    bench.begin(Phase.ADJUSTING, 3, S500, S125);
    fire(3, S250, 0);
    bench.handle(bench.session.question().orElseThrow().keep());
    assertThat(bench.session.question()).isEmpty();
    assertThat(bench.news(SessionEvent.QuestionClosed.class)).hasSize(1);
    assertThat(bench.session.shown()).contains(S125);
    bench.handle(new SessionInput.SpeedChosen(S500));
    fire(3, S250, 0);
    assertThat(asked(Kind.NEIGHBOUR)).hasSize(1);
    assertThat(bench.session.goodAt(S500)).isEqualTo(6);
  }

  @Test
  void oneAnswerMovesAllThreeAndTheRawEdgesStay() {
    bench.begin(Phase.ADJUSTING, 3, S500, S250);
    fire(3, S250, 0.05);
    List<FiringResult> before = List.copyOf(bench.session.results());
    bench.handle(bench.session.question().orElseThrow().move());
    assertThat(bench.session.results())
        .allSatisfy(
            r -> {
              assertThat(r.shown()).contains(S250);
              assertThat(r.notes().movedFrom()).contains(S500);
              assertThat(r.errorStops().orElseThrow()).isBetween(0.04, 0.06);
            });
    assertThat(bench.session.results())
        .extracting(FiringResult::firing)
        .isEqualTo(before.stream().map(FiringResult::firing).toList());
    assertThat(bench.news(SessionEvent.Changed.class)).hasSize(3);
    assertThat(bench.session.question()).isEmpty();
    // The shown speed stands, and lacks its firings now.
    assertThat(bench.session.shown()).contains(S500);
    assertThat(bench.session.goodAt(S500)).isZero();
    assertThat(bench.session.goodAt(S250)).isEqualTo(3);
  }

  @Test
  void nothingIsAskedWhileCurtainsAreAdjustedStepByStep() {
    bench.begin(Phase.ADJUSTING, 9, S500);
    bench.handle(new SessionInput.StepChosen(CurtainStep.SLIT));
    bench.handle(new SessionInput.SpeedChosen(S500));
    fire(3, S250, 0);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void threeThatAreNotInARowRaiseNothing() {
    bench.begin(Phase.ADJUSTING, 9, S500);
    fire(2, S250, 0);
    bench.fire(S500, 0);
    fire(2, S250, 0);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void aDoubleInBetweenBreaksTheRow() {
    bench.begin(Phase.ADJUSTING, 9, S500);
    fire(2, S250, 0);
    bench.light(0.004, 0.0005);
    bench.now += 0.01;
    bench.light(0.003, 0.0005);
    bench.quiet();
    bench.fire(S250, 0);
    assertThat(bench.result(3).outcome()).isEqualTo(Outcome.DOUBLE);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void aMarkingIsFittedWithinAThirdOfAStop() {
    bench.begin(Phase.ADJUSTING, 3, S500);
    fire(3, S250, -0.32);
    assertThat(bench.session.question()).isPresent();

    InventedBench beyond = new InventedBench();
    beyond.begin(Phase.ADJUSTING, 3, S500);
    for (int i = 0; i < 3; i++) {
      beyond.fire(S250, -0.35);
    }
    assertThat(beyond.session.question()).isEmpty();
  }

  @Test
  void ownReadingsOfTheNeighbourCountMoreThanItsMarking() {
    // 1/250 of this shutter reads 0.6 stop slow; 1/500 fired at 1/250's marking fits no reading.
    bench.begin(InventedBench.custom(Phase.ADJUSTING, 3, S250, S500));
    fire(3, S250, 0.6);
    assertThat(bench.session.shown()).contains(S500);
    fire(3, S250, 0);
    assertThat(bench.session.question()).isEmpty();
    assertThat(bench.session.isRunDone()).isTrue();
  }

  @Test
  void ownReadingsOfTheShownSpeedCountToo() {
    // The person has accepted that 1/500 reads like 1/250: later firings are no news.
    bench.begin(Phase.ADJUSTING, 3, S500);
    fire(3, S250, 0);
    bench.handle(new SessionInput.AcceptedAsShown());
    bench.begin(Phase.ADJUSTING, 4, S500);
    fire(4, S250, 0);
    assertThat(asked(Kind.NEIGHBOUR)).hasSize(1);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void readingsFromBeforeTheWorkDoNotCount() {
    // As found, 1/250 read like 1/125; cleaned, 1/125 reads as it should.
    bench.begin(Phase.AS_FOUND, 3, S250);
    fire(4, S125, 0);
    bench.handle(new SessionInput.AcceptedAsShown());
    bench.begin(Phase.AS_LEFT, 3, S125);
    fire(3, S125, 0);
    assertThat(asked(Kind.NEIGHBOUR)).hasSize(1);
    assertThat(asked(Kind.DIAL_NOT_TURNED)).isEmpty();
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void thoseThatFollowAndFitJoinTheQuestion() {
    bench.begin(Phase.ADJUSTING, 5, S500);
    fire(5, S250, 0);
    assertThat(asked(Kind.NEIGHBOUR)).hasSize(1);
    assertThat(bench.session.question().orElseThrow().firings()).isEqualTo(keys(1, 5));
    bench.handle(bench.session.question().orElseThrow().move());
    assertThat(bench.session.goodAt(S250)).isEqualTo(5);
  }

  @Test
  void tenTriesGoOnEvenWhileTheQuestionIsOpen() {
    bench.begin(Phase.ADJUSTING, 3, S500, S60);
    fire(Session.ENOUGH_TRIES, S250, 0);
    assertThat(bench.session.shown()).contains(S60);
    assertThat(bench.session.question()).isPresent();
  }

  @Test
  void rejectingOneOfThreeWithdrawsTheQuestion() {
    bench.begin(Phase.ADJUSTING, 5, S500);
    fire(3, S250, 0);
    bench.handle(new SessionInput.LastRejected("knocked"));
    assertThat(bench.session.question()).isEmpty();
    assertThat(bench.news(SessionEvent.QuestionClosed.class)).hasSize(1);
  }

  @Test
  void aForgottenDialIsAskedAboutOnceAndMovedBack() {
    bench.begin(Phase.ADJUSTING, 2, S125, S250);
    fire(2, S125, 0.1);
    assertThat(bench.session.shown()).contains(S250);
    bench.fire(S125, 0.12);
    assertThat(asked(Kind.DIAL_NOT_TURNED))
        .containsExactly(new Question(Kind.DIAL_NOT_TURNED, S250, S125, keys(3, 3)));
    assertThat(bench.result(3).shown()).contains(S250);
    bench.handle(bench.session.question().orElseThrow().move());
    assertThat(bench.result(3).shown()).contains(S125);
    assertThat(bench.session.goodAt(S125)).isEqualTo(3);
    assertThat(bench.session.shown()).contains(S250);
    fire(2, S250, 0.1);
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(asked(Kind.DIAL_NOT_TURNED)).hasSize(1);
  }

  @Test
  void aDialThatWasTurnedIsKeptAndNeitherQuestionComesAgain() {
    bench.begin(Phase.ADJUSTING, 3, S250, S500);
    fire(3, S250, 0);
    fire(1, S250, 0);
    bench.handle(new SessionInput.AcceptedAsShown());
    fire(2, S250, 0);
    assertThat(asked(Kind.DIAL_NOT_TURNED)).hasSize(1);
    assertThat(asked(Kind.NEIGHBOUR)).isEmpty();
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.session.goodAt(S500)).isEqualTo(3);
  }

  @Test
  void onlyTheFirstAfterMovingOnIsHeldAgainstTheSpeedBefore() {
    bench.begin(Phase.ADJUSTING, 3, S60, S250);
    fire(3, S60, 0);
    bench.fire(S250, 0);
    bench.fire(S60, 0);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void theSpeedBeforeNeedNotBeANeighbour() {
    bench.begin(Phase.ADJUSTING, 1, S60, S500);
    bench.fire(S60, 0.2);
    bench.fire(S60, 0.2);
    assertThat(asked(Kind.DIAL_NOT_TURNED)).extracting(Question::other).containsExactly(S60);
  }

  @Test
  void readingsOfAnotherCameraDoNotCount() {
    bench.begin(Phase.ADJUSTING, 1, S60);
    bench.fire(S60, 0);
    RunSetup other =
        new RunSetup("another", Phase.ADJUSTING, "leaf", List.of(S125), Reference.EXACT, 2);
    bench.begin(other);
    bench.fire(S60, 0);
    assertThat(bench.session.question()).isEmpty();
  }

  @Test
  void aMoveMeansTheSameWithoutAQuestion() {
    bench.begin(Phase.ADJUSTING, 5, S500);
    bench.fire(S250, 0);
    bench.handle(new SessionInput.FiringsMoved(keys(1, 1), S250));
    assertThat(bench.result(1).shown()).contains(S250);
    bench.handle(new SessionInput.FiringsMoved(keys(1, 1), S500));
    assertThat(bench.result(1).shown()).contains(S500);
    assertThat(bench.result(1).notes().movedFrom()).isEmpty();
    bench.handle(new SessionInput.FiringsMoved(List.of(new FiringKey("R-9999", 1, 1)), S250));
    assertThat(bench.session.results()).hasSize(1);
  }

  private void fire(int times, MarkedSpeed like, double stops) {
    for (int i = 0; i < times; i++) {
      bench.fire(like, stops);
    }
  }

  private List<Question> asked(Kind kind) {
    return bench.news(SessionEvent.QuestionAsked.class).stream()
        .map(SessionEvent.QuestionAsked::question)
        .filter(question -> question.kind() == kind)
        .toList();
  }

  private List<FiringKey> keys(int from, int to) {
    return bench.session.results().subList(from - 1, to).stream().map(FiringResult::key).toList();
  }
}
