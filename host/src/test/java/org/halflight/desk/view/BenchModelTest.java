package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.Optional;
import org.halflight.link.LinkState;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.Question;
import org.halflight.session.RunOption;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerances;
import org.halflight.words.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window shows and sounds, without a window. Figures are those of an invented shutter. */
class BenchModelTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed THIRTIETH = MarkedSpeed.parse("1/30");

  private PracticeWork work;

  @BeforeEach
  void begin(@TempDir Path folder) {
    work = new PracticeWork(folder);
  }

  @AfterEach
  void end() {
    work.close();
  }

  @Test
  void aFiringBeforeAnythingIsNamedIsShownAndHeldAgainstNothing() {
    BenchView view = work.fire(Optional.of(SIXTIETH), PracticeMishap.NONE);
    NumeralsText numerals = NumeralsText.of(view);
    assertThat(numerals.large()).matches("1\\d\\.\\d");
    assertThat(numerals.unit()).isEqualTo("ms");
    assertThat(numerals.time()).isEmpty();
    assertThat(numerals.word()).as("which marking is near").matches("1/\\d\\d s");
    assertThat(NextText.of(view).heading()).isEqualTo(Words.say("desk.next.noRun"));
    assertThat(view.link().isPractice()).isTrue();
    assertThat(LinkText.of(view.link()).text()).contains("practice");
  }

  @Test
  void goodFiringsAreCountedAndTheNextSpeedComesByItself() {
    work.begin(Phase.AS_LEFT, 2, "1/60", "1/125");
    assertThat(NextText.of(work.view()).large()).isEqualTo("1/60");
    work.fire();
    assertThat(NextText.of(work.view()).count()).isEqualTo("1 of 2");
    assertThat(work.cues).containsExactly(Cue.COUNTED);
    work.cues.clear();

    BenchView done = work.fire();
    assertThat(work.cues).containsExactly(Cue.SPEED_DONE);
    assertThat(done.justDone()).isPresent();
    assertThat(NextText.of(done).large()).isEqualTo("1/125");
    assertThat(NextText.of(done).doing()).contains("1/60 is done");

    work.fire();
    assertThat(work.view().justDone()).as("steady until the next firing").isEmpty();
    work.cues.clear();
    BenchView all = work.fire();
    assertThat(work.cues).containsExactly(Cue.RUN_DONE);
    assertThat(NextText.of(all).done()).isTrue();
    assertThat(MessageText.of(all).text()).isEqualTo(Words.say("desk.say.leftDone"));
  }

  @Test
  void behindTheThirdFiringItSaysHowManyTheVerdictTakes() {
    work.begin(Phase.AS_LEFT, 5, "1/60");
    work.fire();
    assertThat(MessageText.of(work.fire()).text()).doesNotContain("would decide");
    assertThat(MessageText.of(work.fire()).text())
        .endsWith("At this scatter 3 firings would decide; 5 are planned.");
    assertThat(MessageText.of(work.fire()).text()).doesNotContain("would decide");
  }

  @Test
  void theFirstFiringAfterRestSaysSo() {
    work.begin(Phase.AS_FOUND, 1, "1/60");
    assertThat(NumeralsText.of(work.fire()).note()).contains("first after rest");
  }

  @Test
  void whatIsHeldOpenAsAskedIsNoHang() {
    work.begin(Phase.AS_LEFT, 1, "1/60");
    work.handle(new SessionInput.UntimedTestChosen(UntimedTest.B));
    work.fireOnly(Optional.of(SIXTIETH), PracticeMishap.HANG);
    work.until(() -> work.view().openSeconds().isPresent());
    assertThat(MessageText.of(work.view()).kind()).isEqualTo(MessageText.Kind.HINT);
    assertThat(AdviceText.of(work.view(), RunWords.NOTHING).next())
        .isEqualTo("Let go when the time is up");
    work.handle(new SessionInput.ClosedByHand());
  }

  @Test
  void whatTheNumeralsSayIsNotSaidOnceMore() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    BenchView view = work.fire();
    NumeralsText numerals = NumeralsText.of(view);
    assertThat(numerals.large()).matches("[+\u2212]?0\\.\\d\\d");
    assertThat(view.said().orElseThrow().text()).contains(numerals.large().substring(1) + " stop");
    assertThat(MessageText.of(view).text()).isEqualTo(Words.say("desk.hint.runNoLight"));
  }

  @Test
  void aHangCountsSecondsUntilItIsClosedByHand() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    work.fireOnly(Optional.of(SIXTIETH), PracticeMishap.HANG);
    work.until(() -> work.view().openSeconds().orElse(0) > 2.5);
    NumeralsText open = NumeralsText.of(work.view());
    assertThat(open.tone()).isEqualTo(NumeralsText.Tone.OPEN);
    assertThat(Double.parseDouble(open.large())).isBetween(2.5, 3.5);
    assertThat(open.word()).isEqualTo("OPEN");
    assertThat(AdviceText.of(work.view(), RunWords.NOTHING).next())
        .isEqualTo("Close it by hand, press C");
    assertThat(MessageText.of(work.view()).text()).as("not once more").isEmpty();
    assertThat(KeyHints.of(work.view()).get(0).act()).isEqualTo(UserAction.CLOSED_BY_HAND);

    work.handle(new SessionInput.ClosedByHand());
    work.rig.holdOpen(false);
    work.until(() -> !work.view().results().isEmpty());
    NumeralsText stuck = NumeralsText.of(work.view());
    assertThat(stuck.large()).isEqualTo(Words.say("outcome.stuck-open"));
    assertThat(stuck.time()).startsWith("at least 2.");
    assertThat(work.cues).contains(Cue.NOT_COUNTED);
  }

  @Test
  void aForgottenDialIsAskedAboutAndOneKeyAnswers() {
    work.begin(Phase.AS_LEFT, 3, "1/30", "1/60");
    for (int i = 0; i < 3; i++) {
      work.fire();
    }
    work.cues.clear();
    BenchView asked = work.fire(Optional.of(THIRTIETH), PracticeMishap.NONE);
    assertThat(asked.question().map(Question::kind)).contains(Question.Kind.DIAL_NOT_TURNED);
    assertThat(work.cues).containsExactly(Cue.QUESTION);
    MessageText say = MessageText.of(asked);
    assertThat(say.kind()).isEqualTo(MessageText.Kind.QUESTION);
    assertThat(say.text()).contains("1/30");
    assertThat(AdviceText.of(asked, RunWords.NOTHING).next())
        .isEqualTo("M: it was at 1/30. Space: at 1/60");
    assertThat(KeyHints.of(asked).subList(0, 2))
        .extracting(KeyHints.Hint::act)
        .containsExactly(UserAction.MOVE, UserAction.ACCEPT);

    work.handle(asked.question().get().move());
    assertThat(work.view().question()).isEmpty();
    assertThat(work.view().results().get(3).shown()).contains(THIRTIETH);
    assertThat(work.view().good()).isZero();
  }

  @Test
  void aDoubleIsNamedAndNotCounted() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    BenchView view = work.fire(Optional.of(SIXTIETH), PracticeMishap.DOUBLE);
    assertThat(view.results().get(0).outcome()).isEqualTo(Outcome.DOUBLE);
    assertThat(MessageText.of(view).text())
        .as("it may be the flap of a reflex")
        .contains("reflex viewing", "F4");
    assertThat(NumeralsText.of(view).large()).isEqualTo("double");
    assertThat(view.good()).isZero();
  }

  @Test
  void lightWhileCockingIsLearntAndKnownAgain() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    work.fire();
    work.handle(new SessionInput.CockingLearnt(true));
    assertThat(work.view().cocking()).isEqualTo(BenchView.Cocking.LEARNING);
    for (int i = 0; i < 3; i++) {
      int before = work.view().results().size();
      work.rig.cock(true);
      work.until(() -> work.view().results().size() > before);
    }
    assertThat(work.view().cocking()).isEqualTo(BenchView.Cocking.LEARNT);
    work.rig.cock(true);
    work.until(() -> work.view().results().size() == 5);
    assertThat(work.view().results().get(4).outcome()).isEqualTo(Outcome.LIGHT_WHILE_COCKING);
    assertThat(work.view().good()).isEqualTo(1);
  }

  /** One turn takes an invented shutter off, the next brings it back. */
  @Test
  void whileAdjustingItSoundsCloserFurtherAndEnough() {
    LeafShutter sound = (LeafShutter) work.rig.shutter();
    LeafShutter slow = InventedShutters.allSlow(InventedShutters.dial(), 7);
    work.begin(Phase.ADJUSTING, 4, "1/60");
    work.fire();
    assertThat(work.cues).endsWith(Cue.COUNTED);
    work.fire();
    assertThat(work.cues).endsWith(Cue.ENOUGH);

    work.handle(new SessionInput.Adjusted("spring eased"));
    work.rig.setShutter(slow);
    work.fire();
    assertThat(work.cues).as("one firing decides nothing").endsWith(Cue.COUNTED);
    work.fire();
    assertThat(work.cues).as("also at the end").endsWith(Cue.FURTHER, Cue.RUN_DONE);

    work.handle(new SessionInput.Adjusted("left alone"));
    work.fire();
    work.fire();
    assertThat(work.cues).as("no change").endsWith(Cue.COUNTED, Cue.COUNTED);
    work.handle(new SessionInput.Adjusted("spring as before"));
    work.rig.setShutter(sound);
    work.fire();
    work.fire();
    assertThat(work.cues).endsWith(Cue.ENOUGH);
  }

  @Test
  void closerIsHeardAsLongAsItIsNotEnough() {
    work.rig.setShutter(InventedShutters.allSlow(InventedShutters.dial(), 7));
    work.begin(
        Phase.ADJUSTING,
        3,
        AcceptanceCriteria.USUAL.with(RunOption.TOLERANCE, Tolerances.find("0.01").orElseThrow()),
        "1/60");
    work.fire();
    work.fire();
    work.handle(new SessionInput.Adjusted("spring tightened"));
    work.rig.setShutter(InventedShutters.soundLeaf(InventedShutters.dial(), 7));
    work.fire();
    work.fire();
    assertThat(work.cues).contains(Cue.CLOSER).doesNotContain(Cue.FURTHER, Cue.ENOUGH);
  }

  @Test
  void aSpecialFiringSaysSoAndOnesThatDifferHaveNoMean() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    assertThat(ConditionKeys.hints(work.view()))
        .extracting(KeyHints.Hint::key)
        .containsExactly("2", "3", "7", "8");
    work.fire();
    work.handle(
        new SessionInput.FiringUnder(
            work.view().results().get(0).key(), FiringConditions.parse("quick-tap")));
    work.handle(new SessionInput.ConditionsAre(FiringConditions.parse("lens-down")));
    BenchView view = work.view();
    assertThat(view.good()).isEqualTo(1);
    assertThat(NumeralsText.of(view).note()).contains("quick tap");
    assertThat(ConditionKeys.hints(view))
        .filteredOn(KeyHints.Hint::answers)
        .extracting(KeyHints.Hint::words)
        .containsExactly("lens down", "quick tap");
    BenchPictures.All pictures = BenchPictures.all(view, Optional.of(SIXTIETH));
    assertThat(pictures.row().twin().orElseThrow().cell(0, "conditions")).isEqualTo("quick tap");
    assertThat(String.join(" ", BenchPictures.verdict(view, SIXTIETH)))
        .contains("All its firings: quick tap.");
    work.fire();
    work.fire();
    assertThat(String.join(" ", BenchPictures.verdict(work.view(), SIXTIETH)))
        .contains("different conditions");
  }

  @Test
  void aRejectedFiringIsGreyAndLacksAtItsSpeed() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    work.fire();
    work.handle(new SessionInput.LastRejected("slipped"));
    assertThat(work.view().good()).isZero();
    NumeralsText numerals = NumeralsText.of(work.view());
    assertThat(numerals.tone()).isEqualTo(NumeralsText.Tone.REJECTED);
    assertThat(numerals.note()).contains("not counted");
    assertThat(work.cues).endsWith(Cue.NOT_COUNTED);
    assertThat(KeyHints.of(work.view())).anyMatch(hint -> hint.act() == UserAction.REASON);

    BenchPictures.All before = BenchPictures.all(work.view(), Optional.of(SIXTIETH));
    FiringResult rejected = before.row().rejected(0).orElseThrow();
    assertThat(before.row().rejected(1)).isEmpty();
    assertThat(before.row().twin().orElseThrow().cell(0, "not counted because"))
        .isEqualTo("slipped");
    work.handle(new SessionInput.ReasonChanged(rejected.key(), "camera slipped"));
    assertThat(MessageText.of(work.view()).text())
        .isEqualTo("Firing 1 is not counted: camera slipped.");
    assertThat(
            BenchPictures.all(work.view(), Optional.of(SIXTIETH))
                .row()
                .twin()
                .orElseThrow()
                .cell(0, "not counted because"))
        .isEqualTo("camera slipped");
  }

  @Test
  void figuresOfALostLinkAreGreyAndTheSentenceSaysWhatIsSaved() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    work.fire();
    work.link(LinkState.LOST);
    assertThat(NumeralsText.of(work.view()).tone()).isEqualTo(NumeralsText.Tone.STALE);
    assertThat(MessageText.of(work.view()).text())
        .contains("at firing 2 (1/60)")
        .contains("saved: 1.");
    assertThat(LinkText.of(work.view().link()).up()).isFalse();
    work.link(LinkState.BACK);
    assertThat(NumeralsText.of(work.view()).tone()).isEqualTo(NumeralsText.Tone.SETTLED);
  }

  @Test
  void anAdjustmentStandsOnTheRowAndTheMeanBeginsAnewAfterIt() {
    work.begin(Phase.ADJUSTING, 2, "1/60");
    work.fire();
    work.fire();
    work.handle(new SessionInput.Adjusted("spring turned"));
    work.fire();
    BenchView view = work.fire();
    var row = BenchPictures.firingRow(view, SIXTIETH).orElseThrow();
    assertThat(row.releases()).hasSize(4);
    assertThat(row.adjustments())
        .singleElement()
        .satisfies(
            adjustment -> {
              assertThat(adjustment.beforeRelease()).isEqualTo(3);
              assertThat(adjustment.words()).isEqualTo("spring turned");
            });
    double mean =
        (row.releases().get(2).stops().getAsDouble() + row.releases().get(3).stops().getAsDouble())
            / 2;
    assertThat(row.speed().meanStops().orElseThrow()).isCloseTo(mean, withinPercentage(0.001));
    assertThat(NextText.of(view).done()).as("adjusting is never done by itself").isFalse();
  }

  @Test
  void aRunThatIsDoneSaysWhatItLooksLike() {
    work.begin(Phase.AS_FOUND, 2, "1/15", "1/30", "1/60", "1/125");
    assertThat(RunHints.of(work.view())).isEmpty();
    work.until(
        () -> {
          if (!work.view().runDone()) {
            work.fire();
          }
          return work.view().runDone();
        });
    assertThat(RunHints.of(work.view())).isNotEmpty();
    work.begin(Phase.AS_LEFT, 2, "1/15", "1/30", "1/60", "1/125");
    work.until(
        () -> {
          if (!work.view().runDone()) {
            work.fire();
          }
          return work.view().runDone();
        });
    assertThat(RunHints.of(work.view()))
        .as("the same shutter twice")
        .noneMatch(sentence -> sentence.contains("not noted"));
    assertThat(RunHints.of(work.view())).isNotEmpty();
  }

  @Test
  void theMapHasAPlaceForEverySpeedFromTheStart() {
    work.begin(Phase.AS_FOUND, 2, "1/60", "1/125");
    var map = BenchPictures.speedMap(work.view()).orElseThrow();
    assertThat(map.speeds()).hasSize(10);
    assertThat(map.note()).contains("practice rig");
  }

  @Test
  void everythingIsReadAloudWithUnits() {
    work.begin(Phase.AS_LEFT, 2, "1/60");
    BenchView view = work.fire();
    assertThat(NumeralsText.of(view).spoken()).contains("at 1/60").contains(" s").contains("ms");
    assertThat(NextText.of(view).spoken()).contains("1/60").contains("1 of 2");
  }
}
