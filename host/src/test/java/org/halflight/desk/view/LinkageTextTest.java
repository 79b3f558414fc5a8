package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.workflow.Prompt;
import org.junit.jupiter.api.Test;

class LinkageTextTest {
  private static final JudgedPress REST =
      new JudgedPress(LinkageStep.REST, false, WindState.LOCKED);

  @Test
  void theStateOfTheNewestPressIsLarge() {
    NumeralsText once = numerals(true, REST, stop(false, WindState.TURNS));
    assertThat(once.large()).isEqualTo("ADVANCE ONLY");
    assertThat(once.time()).as("once may be a slip").isEmpty();
    assertThat(once.note()).isEqualTo("Press 2, pause and let go");
    NumeralsText often = numerals(true, restAndFour());
    assertThat(often.time()).isEqualTo("Make the shutter trip earlier in the stroke.");
    assertThat(often.tone()).isEqualTo(NumeralsText.Tone.OUTCOME);
    NumeralsText shutter = numerals(true, REST, stop(true, WindState.LOCKED));
    assertThat(shutter.large()).isEqualTo("SHUTTER ONLY");
    assertThat(shutter.time())
        .isEqualTo("Make the shutter trip later, or unlock the advance earlier.");
    assertThat(numerals(true, REST, stop(false, WindState.LOCKED)).large()).isEqualTo("NEITHER");
    NumeralsText both = numerals(true, REST, stop(true, WindState.TURNS));
    assertThat(both.large()).isEqualTo("BOTH");
    assertThat(both.tone()).isEqualTo(NumeralsText.Tone.SETTLED);
    assertThat(numerals(true, REST, stop(true, WindState.LOCKED), stop(true, WindState.TURNS)))
        .as("the advice is about the press before")
        .returns("BOTH", NumeralsText::large)
        .returns(
            "So far SHUTTER FIRST. Make the shutter trip later, or unlock the advance earlier.",
            NumeralsText::time);
  }

  @Test
  void millisecondsAreSmallAndWithoutAVerdict() {
    JudgedPress slow =
        new JudgedPress(LinkageStep.SQUEEZE, true, WindState.TURNS, false, OptionalDouble.of(0.18));
    NumeralsText text = numerals(true, REST, slow);
    assertThat(text.large()).isEqualTo("BOTH");
    assertThat(text.note()).endsWith("; advance 180 ms ahead");
    JudgedPress slower =
        new JudgedPress(
            LinkageStep.SQUEEZE, true, WindState.TURNS, false, OptionalDouble.of(-0.4172));
    assertThat(numerals(true, REST, slower).note()).as("two digits").endsWith("420 ms after");
    assertThat(text.tone()).isEqualTo(NumeralsText.Tone.SETTLED);
  }

  @Test
  void atTheEndTheLinkageIsLargeAndWhatToDoIsWhatToLookAt() {
    JudgedPress[] right =
        Stream.concat(
                Stream.of(REST),
                Stream.of(LinkageStep.STOP, LinkageStep.SQUEEZE, LinkageStep.TAP)
                    .flatMap(
                        step ->
                            Stream.generate(() -> new JudgedPress(step, true, WindState.TURNS))
                                .limit(step.presses())))
            .toArray(JudgedPress[]::new);
    assertThat(numerals(false, right).large()).isEqualTo("ONE CLICK");
    assertThat(numerals(false, right).tone()).isEqualTo(NumeralsText.Tone.SETTLED);
    NumeralsText wrong = numerals(false, REST, stop(true, WindState.LOCKED));
    assertThat(wrong.large()).isEqualTo("SHUTTER FIRST");
    assertThat(wrong.tone()).isEqualTo(NumeralsText.Tone.OUTCOME);
    assertThat(wrong.spoken()).contains("SHUTTER FIRST").doesNotContain("trip later");
    assertThat(LinkageText.lookAt(view(false, REST, stop(true, WindState.LOCKED))).orElseThrow())
        .contains("trip later");
    assertThat(LinkageText.lookAt(view(false, right))).isEmpty();
    assertThat(numerals(false, restAndFour()).large()).isEqualTo("ADVANCE FIRST");
  }

  @Test
  void beforeTheFirstPressItSaysWhatToDo() {
    LinkageView setUp = new LinkageView(prompt(true), "", Optional.empty(), 0, false, judged());
    assertThat(LinkageText.numerals(setUp).large()).isEqualTo("Set up first");
    assertThat(numerals(true).large()).isEqualTo("Tap the camera");
  }

  /** So often the advance alone is no slip. */
  private static JudgedPress[] restAndFour() {
    return Stream.concat(
            Stream.of(REST), Stream.generate(() -> stop(false, WindState.TURNS)).limit(4))
        .toArray(JudgedPress[]::new);
  }

  private static NumeralsText numerals(boolean underWay, JudgedPress... presses) {
    return LinkageText.numerals(view(underWay, presses));
  }

  private static LinkageView view(boolean underWay, JudgedPress... presses) {
    return new LinkageView(
        prompt(underWay), "", Optional.of(LinkageStep.STOP), 0, true, judged(presses));
  }

  private static LinkageJudgement judged(JudgedPress... presses) {
    return new LinkageJudgement(Arrays.asList(presses));
  }

  private static JudgedPress stop(boolean tripped, WindState wind) {
    return new JudgedPress(LinkageStep.STOP, tripped, wind);
  }

  private static Prompt prompt(boolean underWay) {
    return new Prompt(
        underWay ? Prompt.State.ASKING : Prompt.State.OVER, "", "", 1, 4, 0, Set.of());
  }

  @Test
  void soundsWaitASecondAfterTheLastEdgeAndTheNewestIsHeard() {
    HeldCues held = new HeldCues();
    assertThat(held.release(List.of(Cue.COUNTED), false, 0)).containsExactly(Cue.COUNTED);
    assertThat(held.release(List.of(Cue.COUNTED), true, 0.3)).isEmpty();
    assertThat(held.release(List.of(), true, 0.99)).isEmpty();
    assertThat(held.release(List.of(Cue.RUN_DONE), false, 0.5)).as("still listening").isEmpty();
    assertThat(held.release(List.of(), false, 1)).containsExactly(Cue.RUN_DONE);
    assertThat(held.release(List.of(), true, 2)).isEmpty();
  }
}
