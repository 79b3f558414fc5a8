package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.words.Words;
import org.halflight.workflow.Prompt;

/**
 * What the place of first light says.
 *
 * @param steps a line a step, with how it stands
 * @param at which of them it is at; -1 for none
 * @param sentence what to do
 * @param remark what came of the step before, or what to check
 * @param mayBegin whether it can be begun
 * @param goTo the place where the next step is done; empty where the program leads through it here
 */
public record FirstLightText(
    List<String> steps,
    int at,
    String sentence,
    String remark,
    boolean mayBegin,
    Optional<UserAction> goTo) {
  public FirstLightText {
    steps = List.copyOf(steps);
  }

  /** The words for a view of the bench. */
  public static FirstLightText of(BenchView view) {
    FirstLightView first = view.rig().firstLight();
    boolean free = view.link().isUp() && !view.rig().isUnderWay();
    if (first.state().isEmpty()) {
      return new FirstLightText(
          List.of(),
          -1,
          Words.say(view.link().isUp() ? "desk.first.ready" : "desk.first.noRig"),
          Words.say("firstlight.caution"),
          free,
          Optional.empty());
    }
    FirstLight state = first.state().get();
    Optional<FirstStep> step = first.step();
    return new FirstLightText(
        IntStream.range(0, state.steps().size()).mapToObj(i -> line(state, i, step)).toList(),
        step.map(state.steps()::indexOf).orElse(-1),
        first
            .prompt()
            .map(Prompt::sentence)
            .or(() -> step.map(FirstLightText::next))
            .orElseGet(() -> Words.say("desk.first.over")),
        first.prompt().map(Prompt::remark).orElseGet(() -> FirstLightWords.standing(state)),
        free,
        first.isUnderWay() ? Optional.empty() : step.flatMap(FirstLightText::place));
  }

  private static String line(FirstLight state, int index, Optional<FirstStep> at) {
    FirstStep step = state.steps().get(index);
    Finding finding = state.of(step);
    boolean here =
        at.filter(step::equals).isPresent() && finding.outcome() == Finding.Outcome.NOT_TESTED;
    return Words.say(
        "desk.first.step",
        index + 1,
        FirstLightWords.name(step),
        here ? Words.say("desk.first.now") : Words.of("firstlight.word", finding.outcome()));
  }

  private static String next(FirstStep step) {
    return place(step).isPresent()
        ? Words.of("desk.first.next", step)
        : Words.say("desk.first.again");
  }

  private static Optional<UserAction> place(FirstStep step) {
    return switch (step) {
      case LIGHT -> Optional.of(UserAction.TO_LIGHT);
      case FIRING -> Optional.of(UserAction.TO_BENCH);
      case PAGE -> Optional.of(UserAction.TO_CAMERAS);
      case CALIBRATION -> Optional.of(UserAction.TO_RIG);
      default -> Optional.empty();
    };
  }
}
