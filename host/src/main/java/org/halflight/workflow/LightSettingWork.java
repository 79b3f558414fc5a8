package org.halflight.workflow;

import java.util.EnumSet;
import java.util.Set;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightSentences;
import org.halflight.bench.LightSetting;
import org.halflight.words.Words;

/** Leads the person through setting the light: the shutter shut first, then held open. */
public final class LightSettingWork extends GuidedWork {
  /** Dark level, full light, comparators, thresholds. */
  private static final double PARTS = 4;

  private static final Set<Answer> MAY_STOP = EnumSet.of(Answer.STOP);

  private final BenchDriver driver;
  private final CameraOperator operator;
  private final LightSetting setting;
  private boolean opens;
  private Prompt prompt;

  /** Begins; the shutter is shut. */
  LightSettingWork(BenchDriver driver, CameraOperator operator) {
    this.driver = driver;
    this.operator = operator;
    setting = driver.light().set();
    prompt = now();
  }

  /** Whether the light is set. */
  public boolean isSet() {
    return setting.step() == LightSetting.Step.DONE;
  }

  @Override
  public Prompt prompt() {
    return prompt;
  }

  @Override
  void onAnswer(Answer answer) {
    if (answer == Answer.DONE) {
      open();
    } else {
      driver.light().leave();
      over(Words.say("light.left"));
    }
  }

  @Override
  void goOn() {
    if (prompt.state() == Prompt.State.OVER) {
      return;
    }
    if (prompt.state() == Prompt.State.ASKING && operator.answers()) {
      open();
    }
    if (opens && operator.isDone()) {
      opens = false;
      driver.light().shutterIsOpen();
    }
    prompt = now();
  }

  private void open() {
    operator.hold(true);
    opens = true;
    prompt = now();
  }

  private Prompt now() {
    return switch (setting.step()) {
      case DARK -> works("light.close", 0);
      case OPEN_THE_SHUTTER ->
          opens
              ? works("light.keepOpen", 1)
              : new Prompt(
                  Prompt.State.ASKING,
                  Words.say("light.open"),
                  "",
                  0,
                  0,
                  1 / PARTS,
                  operator.answers() ? MAY_STOP : EnumSet.of(Answer.DONE, Answer.STOP));
      case FULL -> works("light.keepOpen", 1);
      case TRIPS -> works("light.trips", 2);
      case THRESHOLDS ->
          works(setting.hasFixedLevel() ? "light.thresholds.fixed" : "light.thresholds", 3);
      case DONE -> over(LightSentences.done(setting));
      case REFUSED -> over(LightSentences.refused(setting.refusal().orElseThrow()));
    };
  }

  private Prompt works(String key, int partsBefore) {
    return new Prompt(
        Prompt.State.WORKING,
        Words.say(key),
        "",
        0,
        0,
        (partsBefore + (opens ? 0 : setting.progress())) / PARTS,
        MAY_STOP);
  }

  private Prompt over(String sentence) {
    operator.hold(false);
    prompt = new Prompt(Prompt.State.OVER, sentence, "", 0, 0, 1, Set.of());
    return prompt;
  }
}
