package org.halflight.workflow;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.bench.RigLook;
import org.halflight.bench.RigWork;
import org.halflight.firstlight.Fault;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstLightWords;
import org.halflight.firstlight.FirstStep;
import org.halflight.firstlight.StepWatch;
import org.halflight.firstlight.TaskJudge;
import org.halflight.speeds.DecimalComma;
import org.halflight.words.Words;

/**
 * Leads a person through the inputs of a rig that was just built, one at a time, up to its
 * thresholds. What a step wants to see is seen while the hand moves, and the next one comes by
 * itself. The rig is lent for all of it: a hand before a sensor is no firing. Light, firing, page
 * and calibration follow in the session, see {@link FirstLightInSession}.
 *
 * <p>{@link #advance()} takes one line of the rig; while the rig works for itself it comes back
 * only when that is over.
 */
public final class FirstLightWork extends GuidedWork {
  private static final Set<Answer> MAY_SKIP = EnumSet.of(Answer.DONE, Answer.SKIP, Answer.STOP);

  private final RigLook look;
  private final RigWork work;
  private final CameraOperator operator;
  private FirstLight state;
  private Optional<StepWatch> watch = Optional.empty();
  private FirstStep step;
  private Optional<Finding> fault = Optional.empty();
  private boolean isDue;
  private boolean tried;
  private boolean stopped;
  private Prompt prompt;

  /**
   * @param work a rig that has greeted
   * @param operator moves an invented hand; a person does that by hand
   */
  public FirstLightWork(RigWork work, CameraOperator operator) {
    this.work = work;
    this.operator = operator;
    look = new RigLook(work);
    state = FirstLight.of(work.greeting().orElseThrow());
    step = state.next().orElseThrow();
    prompt = asked(remark(FirstStep.FOUND, state.of(FirstStep.FOUND)));
    try {
      look.begin();
    } catch (RigLook.Refused refused) {
      over(CalibrationSentences.refused(refused.why()));
    }
  }

  /** What each step has come to. */
  public FirstLight state() {
    return state;
  }

  /** The step that is asked for, or was last. */
  public FirstStep step() {
    return step;
  }

  @Override
  public Prompt prompt() {
    return prompt;
  }

  /** Whether the volts of the supply are asked for, which are typed. */
  public boolean asksForVolts() {
    return step == FirstStep.SUPPLY && prompt.state() == Prompt.State.ASKING;
  }

  /** The person has typed the volts of the supply. */
  public void volts(String typed) {
    OptionalDouble volts = number(typed);
    if (volts.isEmpty()) {
      prompt = asked(Words.say("firstlight.volts.none", typed.strip()));
    } else {
      ends(TaskJudge.supply(volts.getAsDouble()));
    }
  }

  private static OptionalDouble number(String typed) {
    String plain =
        DecimalComma.pointed(typed.strip().toUpperCase(Locale.ROOT).replaceAll(" ?V$", ""));
    return plain.matches("\\d{1,2}(\\.\\d{1,3})?")
        ? OptionalDouble.of(Double.parseDouble(plain))
        : OptionalDouble.empty();
  }

  @Override
  void onAnswer(Answer answer) {
    if (answer == Answer.STOP) {
      if (prompt.state() == Prompt.State.WORKING) {
        work.stop();
      }
      stop();
    } else if (answer == Answer.SKIP) {
      // A fault that was seen is no secret, even of a step that was left.
      ends(fault.orElseGet(Finding::notTested));
    } else if (asksForVolts()) {
      prompt = asked(Words.say("firstlight.volts.ask"));
    } else if (isOfTheProgram()) {
      operator.tryInput(step);
      isDue = true;
      prompt = works();
    } else if (operator.works() && !tried) {
      tried = true;
      operator.tryInput(step);
    } else {
      looksAgain();
    }
  }

  /** The person says that it was done: what is to be checked, and the step once more. */
  private void looksAgain() {
    Finding found = watched().verdict();
    if (found.isPassed()) {
      ends(found);
    } else {
      fault = Optional.of(found);
      tried = false;
      watch = Optional.empty();
      prompt = asked(remark(step, found));
    }
  }

  private String remark(FirstStep of, Finding finding) {
    return FirstLightWords.remark(of, finding, state.rig().board());
  }

  private boolean isOfTheProgram() {
    return step == FirstStep.LED || step == FirstStep.THRESHOLDS;
  }

  private StepWatch watched() {
    if (watch.isEmpty()) {
      watch = Optional.of(new StepWatch(state.rig().board(), step));
    }
    return watch.get();
  }

  @Override
  void goOn() {
    if (prompt.state() == Prompt.State.OVER) {
      return;
    }
    if (work.isStopped()) {
      stop();
    } else if (isDue && operator.isDone()) {
      isDue = false;
      ofTheProgram();
    } else if (step == FirstStep.SUPPLY || isOfTheProgram()) {
      look.rest();
      work.step();
    } else {
      watches();
    }
  }

  private void watches() {
    look.step(watched());
    Finding now = watched().now();
    if (now.isPassed()) {
      ends(now);
    } else if (now.fault().isPresent()) {
      fault = Optional.of(now);
      prompt = asked(remark(step, now));
    } else {
      prompt = asked(prompt.remark());
    }
  }

  /** What is seen now, in one line. */
  public String live() {
    return watch.map(its -> FirstLightWords.seen(its.now().seen())).orElse("");
  }

  private void ofTheProgram() {
    try {
      Finding found = step == FirstStep.LED ? look.led() : look.thresholds(state.supply());
      if (found.isPassed()) {
        ends(found);
      } else {
        fault = Optional.of(found);
        prompt = asked(remark(step, found));
      }
    } catch (RigLook.Refused refused) {
      fault = Optional.of(Finding.failed(Fault.NO_ANSWER));
      prompt = asked(CalibrationSentences.refused(refused.why()));
    }
  }

  private void ends(Finding finding) {
    state = state.with(step, finding);
    String remark = remark(step, finding);
    fault = Optional.empty();
    tried = false;
    watch = Optional.empty();
    FirstStep next = state.next().orElseThrow();
    if (next.compareTo(FirstStep.THRESHOLDS) > 0) {
      look.rest();
      over(remark);
    } else {
      step = next;
      prompt = asked(remark);
    }
  }

  private Prompt asked(String remark) {
    return new Prompt(
        Prompt.State.ASKING,
        FirstLightWords.toDo(step, state.rig().board()),
        remark,
        state.steps().indexOf(step) + 1,
        state.steps().size(),
        progress(),
        MAY_SKIP);
  }

  private double progress() {
    return (double) state.findings().size() / state.steps().size();
  }

  private Prompt works() {
    return new Prompt(
        Prompt.State.WORKING,
        Words.say("firstlight.works"),
        "",
        0,
        0,
        progress(),
        EnumSet.of(Answer.STOP));
  }

  private void stop() {
    stopped = true;
    look.rest();
    over(Words.say("firstlight.stopped"));
  }

  /** Whether the person has given up. */
  public boolean isStopped() {
    return stopped;
  }

  private void over(String sentence) {
    prompt = new Prompt(Prompt.State.OVER, sentence, "", 0, 0, progress(), Set.of());
  }
}
