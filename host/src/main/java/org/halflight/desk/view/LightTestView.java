package org.halflight.desk.view;

import java.util.Optional;
import java.util.Set;
import org.halflight.bench.LightPlan;
import org.halflight.session.UntimedTest;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.Prompt;

/**
 * A light test that goes on, reading by reading; or what there is to know while none does.
 *
 * @param prompt what the person is to do, or what came of it
 * @param plan the readings of the test; empty where none goes on
 */
public record LightTestView(Prompt prompt, Optional<LightPlan> plan) {
  /** Before the first view. */
  public static final LightTestView NOTHING =
      new LightTestView(new Prompt(Prompt.State.OVER, "", "", 0, 0, 0, Set.of()), Optional.empty());

  /** Whether a test goes on. */
  public boolean isUnderWay() {
    return plan.isPresent();
  }

  /** Whether the person is asked to do something. */
  public boolean isAsking() {
    return prompt.state() == Prompt.State.ASKING;
  }

  /** Whether the light is read. */
  public boolean isReading() {
    return prompt.state() == Prompt.State.WORKING;
  }

  /** Whether it is a test of a kind that goes on. */
  boolean isOf(LightPlan.Kind kind) {
    return plan.filter(its -> its.kind() == kind).isPresent();
  }

  /** The check of the run that the test answers; empty where there is none. */
  public Optional<UntimedTest> check() {
    return plan.flatMap(LightPlan::check);
  }

  /** What the test that goes on is called. */
  String name() {
    return check()
        .map(Sentences::untimedTest)
        .orElseGet(() -> Words.say(isOf(LightPlan.Kind.PANEL) ? "panel.name" : "full.name"));
  }

  /** Which reading of the test it is. */
  public String count() {
    return Words.say("desk.tried.count", prompt.step(), prompt.steps());
  }

  /** What the person is to do, in a word or two. */
  String brief() {
    return plan.map(its -> its.steps().get(prompt.step() - 1))
        .map(step -> Words.of("desk.test", step.what(), step.at()))
        .orElse("");
  }
}
