package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.extratest.LinkageJudgement.Fault;
import org.halflight.extratest.LinkageJudgement.Verdict;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is right and wrong with a linkage: our own rule, on plain values. */
class LinkageJudgementTest {
  private final List<JudgedPress> presses = new ArrayList<>();

  @Test
  void oneClickAtEveryPressIsRight() {
    wholeTest();

    LinkageJudgement judged = new LinkageJudgement(presses);

    assertThat(judged.verdict()).isEqualTo(Verdict.RIGHT);
    assertThat(judged.fault()).isEmpty();
    assertThat(judged.next()).isEmpty();
  }

  @Test
  void missingPressesLeaveItUndecidedAndTheStepDueIsSaid() {
    wholeTest();
    presses.remove(presses.size() - 1);

    LinkageJudgement judged = new LinkageJudgement(presses);

    assertThat(judged.verdict()).isEqualTo(Verdict.UNDECIDED);
    assertThat(judged.next()).contains(LinkageStep.TAP);
    assertThat(judged.missing(LinkageStep.TAP)).isEqualTo(1);
    assertThat(new LinkageJudgement(List.of()).next()).contains(LinkageStep.REST);
  }

  @ParameterizedTest
  @CsvSource({
    // The step of a press that is added to those of a right linkage, and what it makes of them.
    "STOP,     false, LOCKED, false, ",
    "STOP,     false, TURNS,  false, ",
    "STOP,     true,  LOCKED, false, SHUTTER_FIRST",
    "SQUEEZE,  true,  LOCKED, false, SHUTTER_FIRST",
    "SQUEEZE,  false, TURNS,  false, ADVANCE_FIRST",
    "SQUEEZE,  false, LOCKED, false, NEITHER",
    "TAP,      false, TURNS,  false, ADVANCE_FIRST",
    "TAP,      false, LOCKED, false, NEITHER",
    "TAP,      true,  LOCKED, false, SHUTTER_FIRST",
    "TAP,      true,  TURNS,  true,  AGAIN",
    "SQUEEZE,  true,  TURNS,  true,  ",
    "REST,     true,  TURNS,  false, NO_PLAY",
    "REST,     false, TURNS,  false, NO_PLAY",
    "REST,     true,  LOCKED, false, NO_PLAY",
  })
  void onePressDecides(
      LinkageStep step, boolean tripped, WindState wind, boolean again, Fault fault) {
    wholeTest();
    presses.add(new JudgedPress(step, tripped, wind, again, OptionalDouble.empty()));

    LinkageJudgement judged = new LinkageJudgement(presses);

    assertThat(judged.faults()).isEqualTo(fault == null ? List.of() : List.of(fault));
    assertThat(judged.verdict()).isEqualTo(fault == null ? Verdict.RIGHT : Verdict.WRONG);
  }

  @Test
  void theAdvanceAloneAtFourStopsIsWrongAndAtThreeItIsAShadeAhead() {
    for (int i = 0; i < 3; i++) {
      presses.add(new JudgedPress(LinkageStep.STOP, false, WindState.TURNS));
    }
    assertThat(new LinkageJudgement(presses).verdict()).isEqualTo(Verdict.UNDECIDED);

    presses.add(new JudgedPress(LinkageStep.STOP, false, WindState.TURNS));
    assertThat(new LinkageJudgement(presses).fault()).contains(Fault.ADVANCE_FIRST);
  }

  @Test
  void noTimeChangesTheVerdict() {
    wholeTest();
    presses.replaceAll(
        p -> new JudgedPress(p.step(), p.tripped(), p.wind(), false, OptionalDouble.of(0.18)));

    assertThat(presses.get(6).order()).isEqualTo(SqueezeOrder.ADVANCE_FIRST);
    assertThat(new LinkageJudgement(presses).verdict()).isEqualTo(Verdict.RIGHT);
  }

  @ParameterizedTest
  @CsvSource({
    "0.021, ADVANCE_FIRST",
    "0.02, ONE_CLICK",
    "-0.02, ONE_CLICK",
    "-0.021, SHUTTER_FIRST",
  })
  void nearerThanTwentyMillisecondsIsOneClick(double aheadSeconds, SqueezeOrder order) {
    assertThat(SqueezeOrder.of(OptionalDouble.of(aheadSeconds))).isEqualTo(order);
    assertThat(SqueezeOrder.of(OptionalDouble.empty())).isEqualTo(SqueezeOrder.NOT_KNOWN);
  }

  private void wholeTest() {
    presses.add(new JudgedPress(LinkageStep.REST, false, WindState.LOCKED));
    for (LinkageStep step : List.of(LinkageStep.STOP, LinkageStep.SQUEEZE, LinkageStep.TAP)) {
      for (int i = 0; i < step.presses(); i++) {
        presses.add(new JudgedPress(step, true, WindState.TURNS));
      }
    }
  }
}
