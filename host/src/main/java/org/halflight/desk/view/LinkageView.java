package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.session.LinkageStep;
import org.halflight.workflow.LinkageWork;
import org.halflight.workflow.Prompt;

/**
 * The linkage test that goes on, press by press, or has just ended.
 *
 * @param prompt what the person is to do, or what came of it
 * @param doFirst what to do before what the prompt asks for; may be empty
 * @param step that is due; empty while the camera is set up, and at the end
 * @param made presses of that step so far
 * @param asksForWind whether it waits for the person to say how the wind is
 * @param judged what the presses come to
 */
public record LinkageView(
    Prompt prompt,
    String doFirst,
    Optional<LinkageStep> step,
    int made,
    boolean asksForWind,
    LinkageJudgement judged) {
  /** Before a test was begun. */
  public static final LinkageView NOTHING =
      new LinkageView(
          LightTestView.NOTHING.prompt(),
          "",
          Optional.empty(),
          0,
          false,
          new LinkageJudgement(List.of()));

  /** The view of a test. */
  static LinkageView of(LinkageWork work) {
    return new LinkageView(
        work.prompt(),
        work.doFirst(),
        work.step(),
        work.step().map(work::made).orElse(0),
        work.asksForWind(),
        work.judgement());
  }

  /** Whether the test goes on. */
  public boolean isUnderWay() {
    return prompt.state() != Prompt.State.OVER;
  }

  /** Whether there is a test to show. */
  public boolean isShown() {
    return isUnderWay() || !judged.presses().isEmpty();
  }
}
