package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.halflight.extratest.LinkageJudgement.Fault;
import org.halflight.extratest.LinkageJudgement.Verdict;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.Finger;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The linkage test led press by press: the test itself presses the button of the practice rig and
 * tries its wind, well or badly. All figures are simulated.
 */
class LinkageWorkTest {
  /** To a place between where the advance unlocks and the shutter trips, if there is one. */
  private static final Finger STOPS = new Finger(1.2, Finger.Way.EVEN, true);

  private static final Finger TO_THE_END = new Finger(2, Finger.Way.EVEN, false);

  @TempDir private Path folder;

  private PracticeBench bench;
  private RunActions run;

  @BeforeEach
  void begin() {
    bench = PracticeBench.unpaced(folder);
    works(CameraOperator.PERSON);
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void theStepsComeInTheirOrderAndTheEndSaysHowTheLinkageIs() {
    setUp();
    assertThat(prompt().sentence()).isEqualTo(Words.of("linkageWork.ask", LinkageStep.REST));
    rest();
    for (LinkageStep step : List.of(LinkageStep.STOP, LinkageStep.SQUEEZE, LinkageStep.TAP)) {
      for (int i = 0; i < step.presses(); i++) {
        assertThat(work().step()).contains(step);
        assertThat(work().made(step)).isEqualTo(i);
        press(step == LinkageStep.STOP ? STOPS : TO_THE_END);
        assertThat(answerTruly()).isEqualTo(WindState.TURNS);
        assertThat(work().prompt().remark()).contains("BOTH");
      }
    }
    assertThat(prompt().state()).isEqualTo(Prompt.State.OVER);
    assertThat(prompt().sentence()).startsWith("ONE CLICK");
    assertThat(work().judgement().verdict()).isEqualTo(Verdict.RIGHT);
    assertThat(session().isRunDone()).isTrue();
    assertThat(run.linkage().pollEnded()).contains(prompt().sentence());
    assertThat(run.linkage().pollEnded()).isEmpty();
  }

  @Test
  void aWindKeyBeforeThePressHasASentenceAndLosesNothing() {
    run.begin(setup());
    bench.until("it begins", () -> run.linkage().underWay().isPresent());
    run.answer(Answer.TURNS);
    assertThat(prompt().remark()).isEqualTo(Words.say("linkageWork.setUpFirst"));
    run.answer(Answer.DONE);
    rest();
    press(STOPS);
    answerTruly();
    run.answer(Answer.TURNS);
    assertThat(prompt().remark()).isEqualTo(Words.say("linkageWork.pressFirst"));
    assertThat(session().presses()).hasSize(2);
    press(STOPS);
    answerTruly();
    assertThat(session().presses()).hasSize(3);
    assertThat(work().judgement().faults()).isEmpty();
  }

  @Test
  void aPressThatTheSensorMissedCountsWhenItIsAnsweredOnceMore() {
    setUp();
    rest();
    press(STOPS);
    answerTruly();
    bench.rig.rest(2);
    bench.steps(50);
    run.answer(Answer.LOCKED);
    run.answer(Answer.LOCKED);
    assertThat(session().presses()).hasSize(3);
  }

  @Test
  void aKeyWhileTheShutterIsOpenWaitsForIt() {
    setUp();
    rest();
    bench.rig.press(STOPS);
    bench.until("it opens", () -> session().seesLight());
    run.answer(Answer.TURNS);
    assertThat(session().presses()).hasSize(1);
    bench.until("it has closed", () -> session().presses().size() == 2);
    assertThat(prompt().remark()).contains("BOTH");
  }

  @Test
  void whatIsCertainlyWrongMayBeAdjustedAtOnceAndTheTestBeginsAgain() {
    bench.rig.adjustLinkage(ButtonLinkage.SHUTTER_FIRST);
    setUp();
    rest();
    press(STOPS);
    assertThat(answerTruly()).isEqualTo(WindState.LOCKED);
    assertThat(prompt().remark())
        .contains("SHUTTER ONLY")
        .contains(Words.say("linkageWork.pressToTheEnd"))
        .contains("SHUTTER FIRST is certain")
        .endsWith(Words.say("linkageWork.mayAdjust"));
    assertThat(prompt().answers()).contains(Answer.ADJUSTED);
    run.answer(Answer.ADJUSTED);
    assertThat(work().step()).contains(LinkageStep.REST);
    assertThat(work().judgement().presses()).isEmpty();
    bench.rig.adjustLinkage(ButtonLinkage.ONE_CLICK);
    bench.rig.getReady();
    rest();
    press(STOPS);
    answerTruly();
    assertThat(work().judgement().faults()).isEmpty();
    assertThat(session().presses()).hasSize(4);
  }

  @Test
  void aSlipIsUndoneAndThePressAskedForAgain() {
    setUp();
    rest();
    press(STOPS);
    run.answer(Answer.LOCKED);
    bench.until("it is noticed", () -> work().judgement().fault().isPresent());
    bench.driver.undo();
    bench.until("it is asked again", () -> work().made(LinkageStep.STOP) == 0);
    assertThat(work().judgement().faults()).isEmpty();
    run.answer(Answer.TURNS);
    bench.until("it counts", () -> work().made(LinkageStep.STOP) == 1);
    assertThat(session().presses().get(1).trips()).isEqualTo(1);
  }

  @Test
  void whatIsSkippedLeavesItUndecidedAndTheRunGoesOn() {
    run.begin(setup(UntimedTest.LINKAGE, UntimedTest.SELF_TIMER));
    bench.until("it begins", () -> run.linkage().underWay().isPresent());
    run.answer(Answer.DONE);
    for (int i = 0; i < LinkageStep.values().length; i++) {
      run.answer(Answer.SKIP);
    }
    assertThat(prompt().sentence()).startsWith("UNDECIDED");
    assertThat(session().untimedTest()).contains(UntimedTest.SELF_TIMER);
  }

  @Test
  void stoppedItWaitsAndGoesOnWhereItWas() {
    setUp();
    rest();
    press(STOPS);
    answerTruly();
    run.answer(Answer.STOP);
    bench.steps(20);
    assertThat(run.underWay()).isEmpty();
    assertThat(run.linkage().accept()).isTrue();
    assertThat(work().step()).contains(LinkageStep.STOP);
    assertThat(work().made(LinkageStep.STOP)).isEqualTo(1);
  }

  @ParameterizedTest
  @MethodSource("linkages")
  void thePracticeCameraFindsItsOwnFault(ButtonLinkage linkage, List<Fault> faults) {
    works(bench.operator);
    bench.rig.adjustLinkage(linkage);
    run.begin(setup());
    bench.until("it begins", () -> run.linkage().underWay().isPresent());
    bench.until("it is over", () -> run.linkage().underWay().isEmpty());
    assertThat(work().judgement().faults()).isEqualTo(faults);
    assertThat(session().presses()).hasSize(LinkageStep.PRESSES).allMatch(LinkagePress::counts);
    assertThat(session().isRunDone()).isTrue();
  }

  static Stream<Arguments> linkages() {
    return Stream.of(
        Arguments.of(ButtonLinkage.ONE_CLICK, List.of()),
        Arguments.of(ButtonLinkage.ADVANCE_FIRST, List.of(Fault.ADVANCE_FIRST)),
        Arguments.of(ButtonLinkage.SHUTTER_FIRST, List.of(Fault.SHUTTER_FIRST)));
  }

  @Test
  void whatThePracticeCameraAdjustsIsTestedAgain() {
    works(bench.operator);
    bench.rig.adjustLinkage(ButtonLinkage.ADVANCE_FIRST);
    bench.operator.willAdjust(List.of(ButtonLinkage.SHUTTER_FIRST, ButtonLinkage.ONE_CLICK));
    run.begin(setup());
    bench.until("it is done", () -> session().isRunDone());
    assertThat(session().presses().stream().filter(p -> p.step() == LinkageStep.REST)).hasSize(3);
    assertThat(work().judgement().verdict()).isEqualTo(Verdict.RIGHT);
  }

  private void works(CameraOperator operator) {
    run = new RunActions(bench.driver, operator, new BenchLight(bench.driver, operator));
    bench.each(
        () -> {
          run.goOn();
          run.drainEvents();
        });
  }

  private void setUp() {
    run.begin(setup());
    bench.until("it begins", () -> run.linkage().underWay().isPresent());
    assertThat(prompt().sentence()).isEqualTo(Words.say("linkageWork.setUp"));
    run.answer(Answer.DONE);
  }

  private void rest() {
    bench.rig.tap();
    over();
    run.answer(Answer.LOCKED);
    assertThat(work().step()).contains(LinkageStep.STOP);
  }

  private void press(Finger finger) {
    bench.rig.press(finger);
    over();
  }

  private WindState answerTruly() {
    boolean turns = bench.rig.wind();
    run.answer(turns ? Answer.TURNS : Answer.LOCKED);
    bench.rig.getReady();
    return turns ? WindState.TURNS : WindState.LOCKED;
  }

  private void over() {
    bench.until(
        "it is over", () -> bench.rig.isPressOver(session().latestTicks()) && session().isQuiet());
  }

  private static RunSetup setup(UntimedTest... tests) {
    return new RunSetup(
        "invented camera",
        Phase.AS_LEFT,
        "leaf",
        List.of(),
        Reference.EXACT,
        1,
        tests.length == 0 ? new UntimedTest[] {UntimedTest.LINKAGE} : tests);
  }

  private LinkageWork work() {
    return run.linkage().last().orElseThrow();
  }

  private Prompt prompt() {
    return work().prompt();
  }

  private Session session() {
    return bench.session();
  }
}
