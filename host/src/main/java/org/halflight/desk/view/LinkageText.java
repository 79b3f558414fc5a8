package org.halflight.desk.view;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.chart.ExtraTestPictures;
import org.halflight.chart.Picture;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.PressOutcome;
import org.halflight.session.DialSetting;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.halflight.words.LinkageWords;
import org.halflight.words.PressWords;
import org.halflight.words.Words;

/**
 * What the bench shows of the linkage test: the state after each press to be read at arm's length,
 * how the linkage is at the end, and what to do about it.
 */
final class LinkageText {
  private LinkageText() {}

  /** The state that the newest press left, or how the linkage is at the end. */
  static Optional<NumeralsText> numerals(BenchView view) {
    LinkageView linkage = view.linkage();
    return linkage.isShown() ? Optional.of(numerals(linkage)) : Optional.empty();
  }

  static NumeralsText numerals(LinkageView linkage) {
    LinkageJudgement judged = linkage.judged();
    if (!linkage.isUnderWay()) {
      return words(
          LinkageWords.large(judged),
          judged.fault().isEmpty() ? LinkageWords.advice(judged) : "",
          Words.say("desk.linkage.note", judged.presses().size()),
          judged.verdict() == LinkageJudgement.Verdict.RIGHT
              ? NumeralsText.Tone.SETTLED
              : NumeralsText.Tone.OUTCOME);
    }
    if (judged.presses().isEmpty()) {
      String key = linkage.step().isEmpty() ? "desk.linkage.setUp" : "desk.linkage.tap";
      return words(Words.say(key), "", "", NumeralsText.Tone.SETTLED);
    }
    JudgedPress last = judged.presses().get(judged.presses().size() - 1);
    String number = Words.say("desk.linkage.press", judged.presses().size(), step(last));
    return words(
        PressWords.outcome(last.outcome()),
        soFar(judged, last),
        last.aheadSeconds().isEmpty()
            ? number
            : Words.say("desk.linkage.pressNote", number, LinkageWords.apart(last)),
        isAsItShouldBe(last) ? NumeralsText.Tone.SETTLED : NumeralsText.Tone.OUTCOME);
  }

  /** What to do about earlier presses does not look as if it were about one that is right. */
  private static String soFar(LinkageJudgement judged, JudgedPress last) {
    return judged.fault().isEmpty()
        ? ""
        : isAsItShouldBe(last)
            ? Words.say(
                "desk.linkage.soFar", LinkageWords.large(judged), LinkageWords.advice(judged))
            : LinkageWords.advice(judged);
  }

  private static boolean isAsItShouldBe(JudgedPress press) {
    return press.step() == LinkageStep.REST
        ? press.outcome() == PressOutcome.NEITHER
        : press.outcome() == PressOutcome.BOTH
            || (press.outcome() == PressOutcome.NEITHER && !press.step().isFullPress());
  }

  private static String step(JudgedPress press) {
    return PressWords.step(press.step());
  }

  private static NumeralsText words(
      String large, String under, String note, NumeralsText.Tone tone) {
    return new NumeralsText(large, "", false, "", under, "", note, tone);
  }

  /** What to look at, once the test is over and something is wrong. */
  static Optional<String> lookAt(LinkageView linkage) {
    return linkage.isShown() && !linkage.isUnderWay()
        ? linkage.judged().fault().map(fault -> LinkageWords.advice(linkage.judged()))
        : Optional.empty();
  }

  /** What to do next in the test, in a few words. */
  static String doing(LinkageView linkage) {
    return Words.say(
        linkage.asksForWind()
            ? "desk.linkage.tryWind"
            : linkage.step().isEmpty() ? "desk.linkage.begin" : "desk.next.check.linkage");
  }

  /** The presses of this run as a picture, while the test is shown. */
  static Optional<Picture> picture(BenchView view) {
    return ExtraTests.of(view.evidence(), view.runs()).stream()
        .filter(tried -> view.linkage().isShown())
        .filter(tried -> tried instanceof Linkage && tried.run() == view.run())
        .findFirst()
        .flatMap(linkage -> ExtraTestPictures.of(linkage, BenchPictures.note(view)));
  }

  /** What to do, and what came of the press before. */
  static Optional<MessageText> say(BenchView view) {
    LinkageView linkage = view.linkage();
    if (!linkage.isUnderWay()) {
      return Optional.empty();
    }
    String attention =
        view.said()
            .filter(said -> said.kind() == Message.Kind.ATTENTION)
            .map(Message::text)
            .orElse("");
    String text =
        Stream.of(
                linkage.doFirst(),
                attention,
                linkage.asksForWind() ? "" : linkage.prompt().sentence())
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(" "));
    return Optional.of(
        new MessageText(text, text.isEmpty() ? MessageText.Kind.HINT : MessageText.Kind.QUESTION));
  }

  /** Whether the test has ended, wrong, where something is adjusted. */
  private static boolean isToBeAdjusted(BenchView view) {
    return isOver(view)
        && view.linkage().judged().fault().isPresent()
        && view.setup().filter(setup -> setup.phase() == Phase.ADJUSTING).isPresent();
  }

  /** Whether the test is over and the run has not gone on to anything else. */
  static boolean isOver(BenchView view) {
    return view.linkage().isShown()
        && !view.linkage().isUnderWay()
        && view.shown().flatMap(DialSetting::untimedTest).equals(Optional.of(UntimedTest.LINKAGE));
  }

  /** What to do once the test is over. */
  private static Optional<NextText> ended(BenchView view, String heading) {
    if (!isOver(view)) {
      return Optional.empty();
    }
    boolean right = view.linkage().judged().verdict() == LinkageJudgement.Verdict.RIGHT;
    String doing =
        isToBeAdjusted(view)
            ? "desk.linkage.adjust"
            : right ? "desk.linkage.right" : "desk.linkage.stopped";
    return Optional.of(
        new NextText(
            Words.say("desk.next.label.test"),
            heading,
            Words.say(right ? "desk.next.done" : "desk.linkage.name"),
            Words.say(doing),
            0,
            0,
            "",
            right));
  }

  /** The step that is due, and how often it was made. */
  static Optional<NextText> next(BenchView view, String heading) {
    LinkageView linkage = view.linkage();
    if (!linkage.isUnderWay()) {
      return ended(view, heading);
    }
    int wanted = linkage.step().map(step -> step.presses()).orElse(0);
    return Optional.of(
        new NextText(
            Words.say("desk.next.label.press"),
            heading,
            linkage.step().map(PressWords::step).orElseGet(() -> Words.say("desk.linkage.name")),
            Words.say("desk.linkage.set"),
            linkage.made(),
            wanted,
            wanted == 0 ? "" : Words.say("desk.linkage.count", linkage.made(), wanted),
            false));
  }
}
