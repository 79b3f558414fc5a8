package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.job.CheckState;
import org.halflight.session.DialSetting;
import org.halflight.session.UntimedTest;
import org.halflight.words.Numbers;
import org.halflight.words.Words;
import org.halflight.workflow.LightTestWork;
import org.halflight.workflow.Prompt;

/** What the bench shows of a test of the light, in place of numerals and of the one sentence. */
public final class LightTestText {
  private LightTestText() {}

  /** Whether the run has come to a test of the light, under way or not. */
  static boolean isAskedByRun(BenchView view) {
    return !view.runDone()
        && view.shown()
            .flatMap(DialSetting::untimedTest)
            .filter(UntimedTest::isOfTheLight)
            .isPresent();
  }

  /** What is to be done, to be read from two metres; how far it is while the light is read. */
  static Optional<NumeralsText> numerals(BenchView view) {
    LightTestView test = view.lightTest();
    if (!test.isUnderWay()) {
      return Optional.empty();
    }
    Prompt prompt = test.prompt();
    double ofThis = prompt.progress() * prompt.steps() - (prompt.step() - 1);
    return Optional.of(
        new NumeralsText(
            test.brief(),
            "",
            // A stop is short: as words it would grow beyond its place.
            test.isOf(LightPlan.Kind.STOPS),
            "",
            test.isReading() ? Words.say("desk.test.reads", Numbers.percent(ofThis)) : "",
            "",
            view.setup().isPresent()
                ? ""
                : Words.say("desk.test.of", test.name(), prompt.step(), prompt.steps()),
            test.isReading() ? NumeralsText.Tone.PROVISIONAL : NumeralsText.Tone.OUTCOME));
  }

  /** What the bench says when a test has ended; empty where too little was read. */
  public static Optional<Message> ended(LightTestWork test) {
    boolean attention = test.found().filter(found -> found.state() != CheckState.OK).isPresent();
    return test.result().stream()
        .findFirst()
        .map(
            came ->
                new Message(
                    attention ? Message.Kind.ATTENTION : Message.Kind.NEWS, test.mayClose(came)));
  }

  /** What to do, and why the same is asked again. */
  static Optional<MessageText> say(BenchView view) {
    LightTestView test = view.lightTest();
    if (test.isUnderWay()) {
      String remark = test.prompt().remark().isEmpty() ? "" : test.prompt().remark() + " ";
      return Optional.of(
          new MessageText(
              remark + test.prompt().sentence(),
              test.isReading() ? MessageText.Kind.NEWS : MessageText.Kind.QUESTION));
    }
    return isAskedByRun(view)
        ? Optional.of(
            new MessageText(
                Words.say("desk.test.waits", test.prompt().sentence()), MessageText.Kind.ATTENTION))
        : Optional.empty();
  }
}
