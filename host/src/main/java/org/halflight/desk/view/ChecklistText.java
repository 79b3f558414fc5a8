package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.MeasuredChecks;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Checklist;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;

/**
 * The lists of intake and hand-back with what was measured beside what the person answered.
 *
 * @param intake as the person filled it in
 * @param handBack likewise
 * @param tried what was tried beside the marked speeds in the visit, in order
 */
public record ChecklistText(Checklist intake, Checklist handBack, List<ExtraTest> tried) {
  /** Lists on which nothing was answered and nothing measured. */
  public static final ChecklistText EMPTY =
      new ChecklistText(Checklist.EMPTY, Checklist.EMPTY, List.of());

  public ChecklistText {
    tried = List.copyOf(tried);
  }

  /** The answer at intake, or before hand-back, in a few words. */
  public String cell(CheckItem item, boolean isIntake) {
    MeasuredChecks.Answer answer = answer(item, isIntake);
    String state = state(answer.state());
    return switch (answer.origin()) {
      case MEASURED, BOTH -> Words.say("desk.lists.measured", state);
      case DISAGREES -> Words.say("desk.lists.disagrees", state, state(answer.measured()));
      case BY_HAND -> answer.isPartly() ? Words.say("desk.lists.partly", state) : state;
    };
  }

  /** The answer itself at intake, or before hand-back. */
  public CheckState state(CheckItem item, boolean isIntake) {
    return answer(item, isIntake).state();
  }

  /** What was measured for an item, and what was not, a sentence a line. */
  public List<String> said(CheckItem item) {
    List<String> lines = new ArrayList<>();
    for (boolean isIntake : new boolean[] {true, false}) {
      MeasuredChecks.Answer answer = answer(item, isIntake);
      answer.by().stream().map(ExtraTestWords::inShort).forEach(lines::add);
      if (answer.isPartly()) {
        lines.add(
            Words.say(
                isIntake ? "desk.lists.lacks.intake" : "desk.lists.lacks.handBack",
                ExtraTestWords.lacks(answer.lacks())));
      }
    }
    return lines.stream().distinct().collect(Collectors.toList());
  }

  private MeasuredChecks.Answer answer(CheckItem item, boolean isIntake) {
    return isIntake
        ? MeasuredChecks.intake(tried).answer(item, intake)
        : MeasuredChecks.handBack(tried).answer(item, handBack);
  }

  private static String state(Enum<?> state) {
    return Words.of("desk.state", state);
  }
}
