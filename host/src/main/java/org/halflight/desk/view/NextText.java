package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.DialSetting;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

/**
 * The speed to set next, large before cocking, and how many good firings it has.
 *
 * @param label what the large word is: SET before a speed
 * @param heading run and camera
 * @param large the speed as engraved
 * @param doing what to do with it
 * @param good firings that have what was asked for
 * @param wanted firings asked for; 0 where none are
 * @param count the same in words
 * @param done whether the run is done
 */
public record NextText(
    String label,
    String heading,
    String large,
    String doing,
    int good,
    int wanted,
    String count,
    boolean done) {
  /** Before the first view. */
  public static final NextText NOTHING = new NextText("", "", "", "", 0, 0, "", false);

  /** The next speed of a view. */
  public static NextText of(BenchView view) {
    if (view.setup().isEmpty()) {
      return new NextText(
          set(),
          view.camera().isBlank()
              ? Words.say("desk.next.noRun")
              : Words.say("desk.next.noRunYet", view.camera()),
          Words.say("desk.next.anySpeed"),
          fireAnyway(view),
          0,
          0,
          "",
          false);
    }
    RunSetup setup = view.setup().get();
    if (setup.isStage()) {
      return StageText.next(view, setup);
    }
    String heading = heading(view, setup);
    boolean adjusting = setup.phase() == Phase.ADJUSTING;
    if (view.lightTest().isUnderWay()) {
      LightTestView test = view.lightTest();
      return new NextText(
          Words.say("desk.next.label.test"),
          heading,
          test.name(),
          "",
          test.prompt().step() - 1,
          test.prompt().steps(),
          test.count(),
          false);
    }
    if (view.runDone() && !adjusting && !isStayingForMore(view)) {
      return new NextText(
          Words.say("desk.next.label.run"),
          heading,
          Words.say("desk.next.done"),
          Words.of("desk.next.after", setup.phase()),
          0,
          0,
          "",
          true);
    }
    Optional<NextText> ofLinkage = LinkageText.next(view, heading);
    if (ofLinkage.isPresent()) {
      return ofLinkage.get();
    }
    if (view.shown().isEmpty()) {
      return new NextText(set(), heading, "", "", 0, 0, "", false);
    }
    DialSetting shown = view.shown().get();
    if (shown.speed().flatMap(speed -> view.two().flatMap(two -> two.at(speed))).isPresent()) {
      return new NextText(
          set(),
          heading,
          Sentences.dial(shown),
          doingTwo(view.two().orElseThrow(), shown.speed().orElseThrow()),
          view.good(),
          view.wanted(),
          count(view),
          false);
    }
    if (shown.speed().isPresent() && CurtainBench.isLed(view)) {
      return CurtainBench.next(view, setup, Sentences.dial(shown));
    }
    if (adjusting && shown.speed().isPresent()) {
      return new NextText(
          set(),
          heading,
          Sentences.dial(shown),
          Words.say("desk.next.adjusting"),
          0,
          0,
          Words.say("desk.next.adjustingCount", view.good()),
          false);
    }
    return new NextText(
        set(),
        heading,
        Sentences.dial(shown),
        view.justDone().isPresent() && !isQuick(view)
            ? Words.say("desk.next.doneNext", Sentences.dial(view.justDone().get()))
            : doing(view, shown),
        view.good(),
        shown.speed().isPresent() ? view.wanted() : 0,
        shown.speed().isPresent() ? count(view) : "",
        false);
  }

  /** The whole in one line, as it is read aloud. */
  public String spoken() {
    return String.join(
        ", ",
        java.util.stream.Stream.of(label, heading, large, count)
            .filter(part -> !part.isBlank())
            .toList());
  }

  /** What is before a speed. */
  static String set() {
    return Words.say("desk.next.label.set");
  }

  private static String fireAnyway(BenchView view) {
    return Words.say(view.light().set().isPresent() ? "desk.next.beginRun" : "desk.next.setLight");
  }

  private static String count(BenchView view) {
    boolean undecided =
        view.setup().filter(setup -> setup.criteria().untilDecided()).isPresent()
            && view.justDone().isEmpty()
            && view.good() >= view.wanted();
    return undecided
        ? Words.say("desk.next.undecided", view.good())
        : view.good() > view.wanted()
            ? Words.say("desk.next.adjustingCount", view.good())
            : Words.say("desk.next.count", view.good(), view.wanted());
  }

  private static boolean isStayingForMore(BenchView view) {
    if (view.shown().flatMap(DialSetting::untimedTest).equals(Optional.of(UntimedTest.LINKAGE))) {
      return view.linkage().isUnderWay();
    }
    return view.justDone().isEmpty() && view.good() < view.wanted();
  }

  private static String heading(BenchView view, RunSetup setup) {
    String phase = Sentences.phase(setup.phase());
    String camera =
        !view.camera().isBlank()
            ? view.camera()
            : setup.camera().isBlank() ? Words.say("desk.next.unnamed") : setup.camera();
    int place = view.shown().map(setup.settings()::indexOf).orElse(-1);
    return place < 0 || setup.settings().size() == 1 || view.runDone() || view.repeat().isPresent()
        ? Words.say("desk.next.heading", phase, camera)
        : Words.say("desk.next.headingPlace", phase, camera, place + 1, setup.settings().size());
  }

  private static String doingTwo(TwoAtOnce two, MarkedSpeed shown) {
    if (two.isFired()) {
      return Words.say(two.isEnough() ? "desk.next.two.enough" : "desk.next.two.adjust");
    }
    TwoAtOnce.Side other = shown.equals(two.first().speed()) ? two.second() : two.first();
    return other.isFired()
        ? Words.say("desk.next.two.last")
        : Words.say("desk.next.two.fire", other.speed());
  }

  private static boolean isQuick(BenchView view) {
    return view.setup().filter(RunSetup::isQuick).isPresent();
  }

  private static String doing(BenchView view, DialSetting shown) {
    boolean quick = isQuick(view);
    if (quick && shown.speed().isPresent()) {
      return view.repeat()
          .filter(repeat -> shown.speed().equals(Optional.of(repeat.speed())))
          .map(repeat -> Words.of("desk.next.quick", repeat.why()))
          .orElseGet(() -> Words.say("desk.next.quick.set"));
    }
    return quick && shown.untimedTest().filter(UntimedTest::holds).isPresent()
        ? Words.say("desk.next.quick.hold")
        : shown
            .untimedTest()
            .map(each -> Words.say("desk.next.check." + Sentences.check(each)))
            .orElseGet(() -> fire(view));
  }

  private static String fire(BenchView view) {
    boolean first = view.results().stream().noneMatch(firing -> firing.run() == view.run());
    return Words.say(
        first && view.light().set().isEmpty()
            ? "desk.next.noLight"
            : view.link().isPractice() ? "desk.next.practice" : "desk.next.setAndFire");
  }
}
