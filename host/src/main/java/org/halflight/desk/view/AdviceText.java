package org.halflight.desk.view;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.link.LinkState;
import org.halflight.session.DialSetting;
import org.halflight.session.Phase;
import org.halflight.session.Question;
import org.halflight.session.UntimedTest;
import org.halflight.verdict.CurtainTrials;
import org.halflight.words.Words;

/**
 * The foot of the column, each in a few words to be read from two metres.
 *
 * @param lookAt what stands out; empty where nothing does
 * @param next what to do next
 */
public record AdviceText(String lookAt, String next) {
  /** Before the first view. */
  public static final AdviceText NOTHING = new AdviceText("", "");

  /**
   * The advice of a view.
   *
   * @param words what its firings come to
   */
  public static AdviceText of(BenchView view, RunWords words) {
    return new AdviceText(
        LinkageText.lookAt(view.linkage()).orElse(words.lookAt()), next(view, words));
  }

  /** The whole in one line, as it is read aloud. */
  public String spoken() {
    return Stream.of(
            lookAt.isEmpty() ? "" : Words.say("desk.advice.lookAt.spoken", lookAt),
            next.isEmpty() ? "" : Words.say("desk.advice.next.spoken", next))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private static String next(BenchView view, RunWords words) {
    if (view.question().isPresent()) {
      Question asked = view.question().get();
      return Words.say("desk.advice.question", asked.other().label(), asked.shown().label());
    }
    if (!view.link().isUp()) {
      if (view.link().state() != LinkState.SEARCHING) {
        return Words.say("desk.advice.cable");
      }
      return Words.say(view.link().ports().offer() ? "desk.advice.findRig" : "desk.advice.plugIn");
    }
    if (view.lightTest().isUnderWay()) {
      return Words.say(view.lightTest().isReading() ? "desk.next.test.reads" : "desk.next.test");
    }
    if (LightTestText.isAskedByRun(view)) {
      return Words.say("desk.advice.testWaits");
    }
    if (view.linkage().isUnderWay()) {
      return LinkageText.doing(view.linkage());
    }
    if (view.openSeconds().isPresent()) {
      boolean holds =
          view.shown().flatMap(DialSetting::untimedTest).filter(UntimedTest::holds).isPresent();
      return Words.say(holds ? "desk.advice.letGo" : "desk.advice.close");
    }
    if (view.cocking() == BenchView.Cocking.LEARNING) {
      return Words.say("desk.advice.learning");
    }
    if (KeyHints.waitsForFullLight(view)) {
      return Words.say("desk.advice.fullLight");
    }
    NextText next = NextText.of(view);
    Optional<CurtainFindings> curtains = words.curtains().filter(state -> CurtainBench.isLed(view));
    if (curtains.isPresent()) {
      boolean isFiring =
          CurtainBench.toSettle(view) > 0
              || (CurtainBench.good(view) < CurtainTrials.FIRINGS && !view.marks().isEmpty());
      return isFiring ? next.doing() : curtains.get().next(view);
    }
    boolean foundFaults =
        next.done()
            && !words.lookAt().isEmpty()
            && view.setup().filter(setup -> setup.phase() == Phase.AS_FOUND).isPresent();
    return foundFaults
        ? Words.say("desk.next.repair")
        : words.adjusted() && !view.linkage().isShown()
            ? Words.say("desk.next.adjusted")
            : next.doing();
  }
}
