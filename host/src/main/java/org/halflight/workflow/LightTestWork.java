package org.halflight.workflow;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightProbe;
import org.halflight.exposure.LightLevels;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.StopScale;
import org.halflight.job.CheckState;
import org.halflight.session.LightReading;
import org.halflight.session.PanelReadings;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.words.EventSentences;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.PanelWords;
import org.halflight.words.Words;

/**
 * Leads the person through a light test: each reading is asked for, taken, skipped, or asked for
 * again where it cannot be right.
 */
public final class LightTestWork extends GuidedWork {
  private static final Set<Answer> MAY_END = EnumSet.of(Answer.LEAVE, Answer.STOP);

  private final BenchDriver driver;
  private final CameraOperator operator;
  private final LightPlan plan;
  private int at;
  private int readSoFar;
  private boolean isPrepared;
  private boolean isComplete;
  private Optional<LightProbe> probe = Optional.empty();
  private Optional<ExtraTest> found = Optional.empty();
  private List<String> result = List.of();
  private Prompt prompt;

  /** Begins with the first reading; the light is set. */
  LightTestWork(BenchDriver driver, CameraOperator operator, LightPlan plan) {
    this.driver = driver;
    this.operator = operator;
    this.plan = plan;
    driver.light().beginReadings();
    prompt = shown(Prompt.State.ASKING, step().asked(), "", 0);
  }

  /** The readings of the test. */
  public LightPlan plan() {
    return plan;
  }

  /** Whether each reading was taken or skipped, and the test neither left nor stopped. */
  public boolean isComplete() {
    return isComplete;
  }

  /**
   * What the test says of the camera; empty where too little was read, or where it is of the rig.
   */
  public Optional<ExtraTest> found() {
    return found;
  }

  /** What the test came to; empty where too little was read. */
  public List<String> result() {
    return result;
  }

  @Override
  public Prompt prompt() {
    return prompt;
  }

  @Override
  void onAnswer(Answer answer) {
    switch (answer) {
      case DONE -> done();
      case SKIP -> skip(Words.say("lightTest.skipped"));
      case LEAVE, STOP -> end("");
      case TURNS, LOCKED, ADJUSTED -> {
        // No prompt of a light test offers them.
      }
    }
  }

  @Override
  void goOn() {
    if (prompt.state() == Prompt.State.ASKING && operator.answers()) {
      done();
    }
    if (isPrepared && operator.isDone()) {
      isPrepared = false;
      probe = Optional.of(driver.light().read(step().what(), step().at(), step().opening()));
    }
    probe.ifPresent(this::look);
  }

  /** The camera is as asked for, or the operator sees to it; then the light is read. */
  void done() {
    operator.prepare(step());
    isPrepared = true;
    reads(0);
  }

  private LightPlan.Step step() {
    return plan.steps().get(at);
  }

  private void look(LightProbe under) {
    switch (under.step()) {
      case READING -> reads(under.progress());
      case NOT_STILL -> again(Words.say("lightTest.notStill"));
      case NO_ANSWER -> {
        // With the link the session has forgotten that no opening counts.
        driver.light().beginReadings();
        again(Words.say("lightTest.noAnswer"));
      }
      case DONE -> read(under.reading().orElseThrow());
    }
  }

  private void read(LightReading reading) {
    double dark = session().light().map(LightLevels::darkCounts).orElse(0.0);
    if (step().opensShutter() && reading.counts() - dark < StopScale.LEAST_COUNTS) {
      again(Words.say("lightTest.notOpen"));
    } else {
      readSoFar++;
      next(said(reading));
    }
  }

  private String said(LightReading reading) {
    SessionEvent event =
        reading.what() == LightReading.What.FULL
            ? new SessionEvent.FullLightRead(
                session().light().orElseThrow().shareOfFull(reading.counts()))
            : new SessionEvent.LightWasRead(reading);
    return EventSentences.of(event).orElseThrow();
  }

  /** The same is asked for again; where nobody is there to mend it, it is skipped. */
  private void again(String why) {
    if (operator.answers()) {
      skip(why);
    } else {
      asks(why);
    }
  }

  private void skip(String why) {
    if (step().needed()) {
      isComplete = true;
      end(why);
    } else {
      next(why);
    }
  }

  private void next(String remark) {
    if (at + 1 < plan.steps().size()) {
      at++;
      asks(remark);
    } else {
      isComplete = true;
      end(remark);
    }
  }

  private void asks(String remark) {
    forget();
    prompt = shown(Prompt.State.ASKING, step().asked(), remark, 0);
  }

  private void reads(double part) {
    // In whole percent: a window need not be painted for each block.
    prompt =
        shown(Prompt.State.WORKING, Words.say("lightTest.wait"), "", Math.floor(part * 100) / 100);
  }

  private Prompt shown(Prompt.State state, String sentence, String remark, double part) {
    Set<Answer> answers = EnumSet.copyOf(MAY_END);
    if (!operator.answers()) {
      answers.add(Answer.SKIP);
      if (state == Prompt.State.ASKING) {
        answers.add(Answer.DONE);
      }
    }
    int steps = plan.steps().size();
    return new Prompt(state, sentence, remark, at + 1, steps, (at + part) / steps, answers);
  }

  private void forget() {
    isPrepared = false;
    probe = Optional.empty();
  }

  private void end(String remark) {
    forget();
    operator.putBack();
    driver.light().endReadings();
    if (readSoFar > 0) {
      found = plan.found(session().readings(), session().runs(), session().run());
      result = found.map(ExtraTestWords::lines).orElseGet(() -> ofTheRig(remark));
    }
    String last = result.contains(remark) ? "" : remark;
    prompt = new Prompt(Prompt.State.OVER, mayClose(ended()), last, 0, 0, 1, Set.of());
  }

  private List<String> ofTheRig(String remark) {
    return switch (plan.kind()) {
      case LEAK, STOPS -> List.of();
      case FULL -> List.of(remark);
      case PANEL ->
          PanelReadings.last(session().readings(), serial())
              .filter(test -> isComplete)
              .map(PanelWords::lines)
              .orElseGet(List::of);
    };
  }

  private String serial() {
    return driver.workbench().fold().greeting().map(rig -> rig.serial()).orElse("");
  }

  /** Where nothing could be judged, why and what to do; else in a word what came of it. */
  private String ended() {
    if (result.isEmpty()) {
      boolean panel = plan.kind() == LightPlan.Kind.PANEL;
      return Words.say(panel ? "panel.none" : "lightTest.nothingRead");
    }
    return found
        .filter(test -> test.state() != CheckState.NOT_TESTED)
        .map(
            test ->
                Words.say("lightTest.ended", ExtraTestWords.name(test), ExtraTestWords.state(test)))
        .orElse(result.get(0));
  }

  /** A sentence of what came of the test, behind what to do where the shutter is still open. */
  public String mayClose(String sentence) {
    return session().seesLight() && !operator.works()
        ? Words.say("lightTest.letClose", sentence)
        : sentence;
  }

  private Session session() {
    return driver.workbench().fold().session();
  }
}
