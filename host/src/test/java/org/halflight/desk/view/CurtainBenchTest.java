package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.chart.CurtainBand;
import org.halflight.chart.GatePicture;
import org.halflight.chart.SpeedMap;
import org.halflight.chart.TrialsPicture;
import org.halflight.chart.WedgePicture;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.CurtainStep;
import org.halflight.session.DialSetting;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Curtains at the bench. All figures are those of an invented shutter. */
class CurtainBenchTest {
  @TempDir Path folder;

  private static Optional<MarkedSpeed> shown(BenchView view) {
    return view.shown().flatMap(DialSetting::speed);
  }

  private static List<Class<?>> pictures(BenchView view, int turns) {
    return BenchPictures.all(view, shown(view), turns).places().stream()
        .<Class<?>>map(place -> place.picture().orElseThrow().getClass())
        .toList();
  }

  @Test
  void asFoundTheGateLeadsAndThreeFiguresAreLarge() {
    try (PracticeWork work = new PracticeWork(folder, CurtainWork.found())) {
      CurtainWork.begin(work, Phase.AS_FOUND);
      assertThat(work.view().setup().orElseThrow().order())
          .extracting(MarkedSpeed::label)
          .containsExactly("1/1000", "1/250", "1/30", "1/8");
      BenchView view = work.fire();
      CurtainText text = CurtainText.of(view).orElseThrow();
      assertThat(text.sides())
          .extracting(TwoText.Side::speed)
          .containsExactly("FIRST", "SECOND", "END at 1/1000");
      assertThat(text.sides().get(0).figure()).matches("1[89]\\.\\d ms");
      assertThat(text.sides().get(0).word()).endsWith("% slow");
      assertThat(text.centre()).startsWith("centre ").contains("wanted 0.977 ms");
      assertThat(text.spoken()).contains("FIRST, ").contains("; END at 1/1000, ");
      assertThat(pictures(view, 0).subList(0, 2))
          .containsExactly(GatePicture.class, SpeedMap.class);
      assertThat(pictures(view, 2).get(0)).isEqualTo(WedgePicture.class);
      assertThat(CurtainBench.isLed(view)).isFalse();
      assertThat(CurtainKeys.hints(view)).isEmpty();
    }
  }

  @Test
  void adjustingIsLedStepByStep() {
    try (PracticeWork work = new PracticeWork(folder, CurtainWork.found())) {
      CurtainWork.begin(work, Phase.ADJUSTING);
      BenchView begun = work.view();
      assertThat(CurtainBench.isLed(begun)).isTrue();
      assertThat(CurtainBench.step(begun)).isEqualTo(CurtainStep.CLEAN);
      assertThat(CurtainBench.begun(begun, Optional.empty())).isEqualTo("first-tension found ");
      assertThat(CurtainKeys.turn(UserAction.TURN_TIGHTER, begun, Optional.empty())).isEmpty();
      work.handle(new SessionInput.Adjusted("first-tension found 3 1/2"));
      assertThat(CurtainBench.begun(work.view(), Optional.empty()))
          .isEqualTo("second-tension found ");

      assertThat(NextText.of(work.view()).heading()).startsWith("step 0 of 8: Clean and count");
      CurtainStep next = CurtainKeys.step(UserAction.STEP_NEXT, work.view()).orElseThrow();
      assertThat(next).isEqualTo(CurtainStep.FIRST_TENSION);
      work.handle(new SessionInput.StepChosen(next));
      assertThat(shown(work.view())).contains(CurtainWork.X);
      AdjusterTurn turn =
          CurtainKeys.turn(UserAction.TURN_TIGHTER, work.view(), Optional.empty()).orElseThrow();
      assertThat(turn).isEqualTo(AdjusterTurn.turned(Adjuster.FIRST_TENSION, 0.125));
      work.handle(new SessionInput.Adjusted(turn.text()));
      assertThat(NextText.of(work.view()).heading()).startsWith("step 1 of 8: First curtain");
      assertThat(NextText.of(work.view()).count()).isEqualTo("settling, 1 of 2, not counted");
      work.cues.clear();
      work.fire();
      assertThat(NextText.of(work.view()).count()).isEqualTo("settling, 2 of 2, not counted");
      work.fire();
      assertThat(work.cues).containsOnly(Cue.NOT_COUNTED);
      assertThat(NextText.of(work.view()).count()).isEqualTo("0 of 3");
      work.fire();
      work.fire();
      BenchView fired = work.fire();
      assertThat(NextText.of(fired).count()).isEqualTo("3 of 3");
      CurtainFindings findings = CurtainFindings.of(fired).orElseThrow();
      assertThat(findings.runs().get(0).figures().shots()).hasSize(3);
      assertThat(findings.advice().act()).isEqualTo(CurtainAdvice.Act.MORE_FIRST);
      RunWords words = RunWords.of(fired);
      assertThat(AdviceText.of(fired, words))
          .isEqualTo(new AdviceText("first is slow", "tighten the first"));
      assertThat(words.hints())
          .startsWith("Give the first curtain a little more tension.")
          .endsWith("Turns so far: first +1/8 (found at 3.50).");
      work.handle(new SessionInput.StepChosen(CurtainStep.CONTACT));
      assertThat(CurtainFindings.of(work.view()).orElseThrow().next(work.view()))
          .isEqualTo("Ctrl+1: tighten the first");
      assertThat(pictures(fired, 0))
          .containsExactly(GatePicture.class, TrialsPicture.class, CurtainBand.class);
    }
  }

  @Test
  void anyStepIsOpenDirectlyButThoseWithNothingToTurn() {
    try (PracticeWork work = new PracticeWork(folder, CurtainWork.found())) {
      RunSetup setup = CurtainWork.setup(Phase.ADJUSTING);
      work.begin(
          setup.withCriteria(
              setup
                  .criteria()
                  .with(
                      RunOption.ADJUSTERS,
                      Adjuster.findAll("first-tension, second-tension").orElseThrow())));
      BenchView view = work.view();
      assertThat(CurtainKeys.step(UserAction.STEP_NEXT_DAY, view)).contains(CurtainStep.NEXT_DAY);
      assertThat(CurtainKeys.step(UserAction.STEP_BRAKE, view)).isEmpty();
      work.handle(new SessionInput.StepChosen(CurtainStep.AGAIN));
      assertThat(CurtainKeys.step(UserAction.STEP_NEXT, work.view()))
          .contains(CurtainStep.NEXT_DAY);
      assertThat(KeyHints.of(work.view()).stream().map(KeyHints.Hint::act))
          .contains(UserAction.STEP_NEXT, UserAction.TURN_TIGHTER)
          .doesNotContain(UserAction.TWO);
    }
  }

  @Test
  void moreThanAQuarterOfATurnIsCalledADrag() {
    try (PracticeWork work = new PracticeWork(folder, CurtainWork.found())) {
      CurtainWork.begin(work, Phase.ADJUSTING);
      CurtainWork.turn(work, CurtainStep.FIRST_TENSION, Adjuster.FIRST_TENSION, 0.25, 0);
      assertThat(CurtainBench.isTooFar(work.view())).isFalse();
      CurtainWork.turn(work, CurtainStep.FIRST_TENSION, Adjuster.FIRST_TENSION, 0.125, 3);
      assertThat(CurtainBench.isTooFar(work.view())).isTrue();
      RunWords words = RunWords.of(work.view());
      assertThat(words.lookAt()).isEqualTo("a drag, not the spring");
      assertThat(words.hints()).contains("Stop winding").contains("first +3/8");
    }
  }

  @Test
  void turnsAreWrittenAsTheyAreCounted() {
    assertThat(CurtainBench.turns(0.125)).isEqualTo("+1/8");
    assertThat(CurtainBench.turns(-0.5)).isEqualTo("\u22121/2");
    assertThat(CurtainBench.turns(1.75)).isEqualTo("+1 3/4");
    assertThat(CurtainBench.turns(2)).isEqualTo("+2");
    assertThat(CurtainBench.turns(0)).isEqualTo("0");
    assertThat(CurtainBench.turns(0.3)).isEqualTo("+0.30");
  }
}
