package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.session.UntimedTest;
import org.halflight.words.Numbers;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/** What the bench shows of a test of the light, in place of numerals and of the one sentence. */
final class LightTestText {
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
    String which = test.check().map(Sentences::untimedTest).orElseGet(() -> Words.say("full.name"));
    boolean reads = test.doing() == LightTestView.Doing.READING;
    double ofThis = test.progress() * test.steps() - (test.step() - 1);
    return Optional.of(
        new NumeralsText(
            test.brief(),
            "",
            // A stop is short: as words it would grow beyond its place.
            test.check().equals(Optional.of(UntimedTest.STOPS)),
            reads ? Words.say("desk.test.reads", Numbers.percent(ofThis)) : "",
            "",
            Words.say("desk.test.of", which, test.step(), test.steps()),
            reads ? NumeralsText.Tone.PROVISIONAL : NumeralsText.Tone.OUTCOME));
  }

  /** What to do, and why the same is asked again. */
  static Optional<MessageText> say(BenchView view) {
    LightTestView test = view.lightTest();
    if (test.isUnderWay()) {
      String remark = test.remark().isEmpty() ? "" : test.remark() + " ";
      return Optional.of(
          new MessageText(
              remark + test.sentence(),
              test.doing() == LightTestView.Doing.READING
                  ? MessageText.Kind.NEWS
                  : MessageText.Kind.QUESTION));
    }
    return isAskedByRun(view)
        ? Optional.of(
            new MessageText(
                Words.say("desk.test.waits", test.sentence()), MessageText.Kind.ATTENTION))
        : Optional.empty();
  }
}
