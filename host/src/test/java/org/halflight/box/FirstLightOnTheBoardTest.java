package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.halflight.bench.RigWork;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.workflow.Answer;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.FirstLightWork;
import org.halflight.workflow.Prompt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The inputs of a rig with the real firmware, moved by a simulated hand. All is simulated. */
@ExtendWith(AvrTools.class)
@Tag("board")
class FirstLightOnTheBoardTest {
  private static final List<String> SCENARIO =
      List.of(
          "light all 40 4000",
          "led centre 3500",
          "led-filter 1000",
          "curve hand",
          "0 1",
          "20000 0",
          "500000 0",
          "520000 1",
          "end-curve",
          BenchInABox.NAMED);

  private static final Set<FirstStep> TESTED =
      EnumSet.range(FirstStep.CENTRE, FirstStep.THRESHOLDS);

  @TempDir private Path folder;

  @Test
  void everyInputIsSeenByTheRealFirmwareAndOneThatStaysSilentIsNamed() throws Exception {
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, folder.resolve("first.session"), List.of(box.port()))) {
      bench.connect();
      box.say("hold +0 1");
      try (RigWork work = bench.driver().lend(() -> {}, happened -> {})) {
        FirstLightWork first = new FirstLightWork(work, CameraOperator.PERSON);
        first.volts("5.02");
        BenchInABox.Limit limit = box.limit();
        while (first.prompt().state() != Prompt.State.OVER) {
          FirstStep step = first.step();
          move(box, step);
          long from = box.nanos();
          while (first.step() == step
              && first.prompt().state() != Prompt.State.OVER
              && box.nanos() - from < 2.5e9) {
            assertThat(limit.isOver()).isFalse();
            first.advance();
          }
          if (first.step() == step && first.prompt().state() == Prompt.State.ASKING) {
            first.answer(Answer.DONE);
            if (step == FirstStep.KNOB) {
              first.answer(Answer.SKIP);
            }
          }
        }
        check(first.state());
      }
    }
  }

  private static void check(FirstLight state) {
    FirstLightWords.report(state).forEach(System.out::println);
    for (FirstStep step : TESTED) {
      assertThat(state.of(step).isPassed())
          .as(FirstLightWords.remark(step, state.of(step), state.rig().board()))
          .isEqualTo(step != FirstStep.KNOB);
    }
    assertThat(state.of(FirstStep.KNOB).fault()).contains(Fault.NOTHING_CAME);
  }

  private static void move(BenchInABox box, FirstStep step) throws Exception {
    switch (step) {
      case CENTRE -> box.say("fire +0.5 hand");
      case OUTER_A -> box.say("fire +1 hand outerA");
      case OUTER_B -> box.say("fire +1 hand outerB");
      case CONTACT, CLICK, RELEASE -> {
        String pin = step.input().orElseThrow().label();
        box.say("pin +0.3 " + pin + " 1");
        box.say("pin +0.5 " + pin + " 0");
      }
      case LED -> box.say("hold +0 0");
      default -> {
        // The knob contact is not connected; thresholds need no hand.
      }
    }
  }
}
