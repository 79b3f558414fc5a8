package org.halflight.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.exposure.DecidedBy;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;

/** Which keys are worth showing now, those of the moment first. */
public final class KeyHints {
  /**
   * A key and what it does now.
   *
   * @param act what it does
   * @param key its name for people
   * @param words what it does in a few words
   * @param answers whether it answers what is asked now
   */
  public record Hint(UserAction act, String key, String words, boolean answers) {}

  private static final String CONTROL = "CTRL+";
  private static final String SHIFTED = "CTRL+SHIFT+";

  private KeyHints() {}

  /** The keys of the bench, and the pedal beside the key whose work it does now. */
  public static List<Hint> withPedal(BenchView view) {
    List<Hint> hints = new ArrayList<>(of(view));
    Optional<UserAction> proposed = Proposal.of(view, hints);
    if (proposed.isPresent()) {
      UserAction act = proposed.get();
      boolean isThere = false;
      for (int i = 0; i < hints.size(); i++) {
        Hint hint = hints.get(i);
        if (hint.act() == act) {
          isThere = true;
          String both = Words.say("desk.pedal.and", hint.key());
          hints.set(i, new Hint(act, both, hint.words(), hint.answers()));
        }
      }
      if (!isThere) {
        String both = Words.say("desk.pedal.and", keyName(act));
        hints.add(0, new Hint(act, both, words(act), true));
      }
    }
    return hints;
  }

  /** The keys of the bench. */
  public static List<Hint> of(BenchView view) {
    List<Hint> hints = new ArrayList<>();
    boolean practice = view.link().isPractice();
    if (view.question().isPresent()) {
      hints.add(
          hint(
              UserAction.MOVE,
              Words.say("desk.key.move.to", view.question().get().other().label()),
              true));
      hints.add(
          hint(
              UserAction.ACCEPT,
              Words.say("desk.key.accept.as", view.question().get().shown().label()),
              true));
    }
    if (view.link().ports().offer()) {
      hints.add(hint(UserAction.CHANGE_BENCH, otherBench(view.link()), false));
    }
    LightTestView test = view.lightTest();
    if (test.isUnderWay() || LightTestText.isAskedByRun(view)) {
      return ofTest(view, test);
    }
    if (view.linkage().isUnderWay()) {
      return ofLinkage(view);
    }
    if (waitsForFullLight(view)) {
      hints.add(hint(UserAction.FULL_LIGHT, Words.say("desk.key.full-light"), true));
    }
    if (view.openSeconds().isPresent()) {
      // Where it is to be held open, nothing hangs, and a foot on a pedal must not say so.
      boolean hangs =
          view.shown().flatMap(its -> its.untimedTest()).filter(UntimedTest::holds).isEmpty();
      hints.add(hint(UserAction.CLOSED_BY_HAND, Words.say("desk.key.closed-by-hand"), hangs));
    }
    if (NextText.of(view).done()) {
      hints.add(hint(UserAction.TO_RUN, Words.say("desk.key.nextRun"), view.link().isUp()));
    }
    hints.addAll(StageText.keys(view));
    if (practice) {
      hints.add(hint(UserAction.FIRE, Words.say("desk.key.fire"), false));
    }
    if (view.setup().isPresent()) {
      hints.add(plain(UserAction.NEXT));
      hints.add(plain(UserAction.PREVIOUS));
    }
    if (!view.results().isEmpty()) {
      hints.add(plain(UserAction.REJECT));
    }
    if (view.last().flatMap(LastFiring::over).flatMap(FiringResult::rejection).isPresent()) {
      hints.add(plain(UserAction.REASON));
    }
    if (view.setup()
        .filter(setup -> setup.phase() == Phase.ADJUSTING && !setup.isStage())
        .isPresent()) {
      hints.addAll(CurtainKeys.hints(view));
      hints.add(hint(UserAction.MARK, Words.say("desk.key.mark"), !CurtainBench.isLed(view)));
      if (!view.linkage().isShown() && !CurtainBench.isLed(view)) {
        hints.add(
            hint(
                UserAction.TWO,
                Words.say(view.two().isPresent() ? "desk.key.two.off" : "desk.key.two"),
                false));
      }
    }
    hints.add(
        hint(
            UserAction.LEARN_COCKING,
            Words.say(
                view.cocking() == BenchView.Cocking.LEARNING
                    ? "desk.key.learn-cocking.end"
                    : "desk.key.learn-cocking"),
            view.cocking() == BenchView.Cocking.LEARNING));
    ConditionKeys.cap(view).ifPresent(hints::add);
    if (!view.results().isEmpty()) {
      hints.add(
          hint(
              UserAction.CURVE,
              Words.say(CurtainBench.isCurtain(view) ? "desk.key.curve.next" : "desk.key.curve"),
              false));
      hints.add(plain(UserAction.DETAILS));
    }
    hints.add(plain(UserAction.FAR_VIEW));
    hints.add(plain(UserAction.TABLES));
    hints.add(plain(UserAction.KEYS));
    return hints;
  }

  /** Words with a capital letter at their beginning. */
  public static String begun(String words) {
    int first = words.offsetByCodePoints(0, 1);
    return words.substring(0, first).toUpperCase(Locale.ROOT) + words.substring(first);
  }

  /** Which bench can be changed to. */
  public static String otherBench(LinkView link) {
    return Words.say(link.isPractice() ? "desk.bench.toRig" : "desk.bench.toPractice");
  }

  /** Whether the last firing has no time until full light is measured again. */
  static boolean waitsForFullLight(BenchView view) {
    return !view.results().isEmpty()
        && view.results()
            .get(view.results().size() - 1)
            .decidedBy()
            .equals(Optional.of(DecidedBy.FULL_LIGHT_AGAIN));
  }

  /** Both hands are busy and nothing is fired: only what a test of the light needs. */
  private static List<Hint> ofTest(BenchView view, LightTestView test) {
    List<Hint> hints = new ArrayList<>();
    if (!test.isReading()) {
      hints.add(
          hint(
              UserAction.ACCEPT,
              Words.say(test.isUnderWay() ? "desk.key.accept.read" : "desk.key.accept.begin"),
              true));
    }
    if (test.isUnderWay()) {
      hints.add(plain(UserAction.SKIP_READING));
      hints.add(plain(UserAction.STOP_READING));
    }
    if (view.setup().isPresent()) {
      hints.add(hint(UserAction.NEXT, Words.say("desk.key.next.inRun"), false));
      hints.add(hint(UserAction.PREVIOUS, Words.say("desk.key.previous.inRun"), false));
    }
    hints.add(plain(UserAction.TO_TRIED));
    hints.add(plain(UserAction.KEYS));
    return hints;
  }

  /** One hand on the camera: what the linkage test needs, and what takes a slip back. */
  private static List<Hint> ofLinkage(BenchView view) {
    List<Hint> hints = new ArrayList<>();
    LinkageView linkage = view.linkage();
    if (linkage.asksForWind()) {
      hints.add(hint(UserAction.WIND_TURNS, words(UserAction.WIND_TURNS), true));
      hints.add(hint(UserAction.WIND_LOCKED, words(UserAction.WIND_LOCKED), true));
    } else {
      hints.add(hint(UserAction.ACCEPT, Words.say("desk.key.accept.linkage"), true));
    }
    if (linkage.prompt().answers().contains(Answer.ADJUSTED)) {
      hints.add(hint(UserAction.MARK, Words.say("desk.key.mark"), true));
    }
    if (view.link().isPractice()) {
      hints.add(hint(UserAction.FIRE, Words.say("desk.key.fire.press"), false));
    }
    hints.add(plain(UserAction.UNDO));
    hints.add(plain(UserAction.SKIP_READING));
    hints.add(plain(UserAction.STOP_READING));
    hints.add(plain(UserAction.KEYS));
    return hints;
  }

  /** Whether a key means something now; one that means something only at times is offered then. */
  public static boolean isOffered(UserAction act, BenchView view) {
    return switch (act) {
      case WIND_TURNS, WIND_LOCKED -> view.linkage().isUnderWay();
      case SWITCH_COVER, SWITCH_CELLS, SWITCH_PLACE ->
          view.setup().filter(RunSetup::isStage).isPresent();
      default -> !CurtainKeys.isOfCurtains(act) || CurtainBench.isCurtain(view);
    };
  }

  private static Hint plain(UserAction act) {
    return hint(act, words(act), false);
  }

  static Hint hint(UserAction act, String words, boolean answers) {
    return new Hint(act, keyName(act), words, answers);
  }

  /** What an act does, in a few words. */
  public static String words(UserAction act) {
    return Words.of("desk.key", act);
  }

  /** The name of the key of an act, as a person calls it. */
  public static String keyName(UserAction act) {
    String key = KeyMap.keyOf(act);
    return switch (key) {
      case "SPACE" -> Words.say("desk.keyName.space");
      case "BACKSPACE" -> Words.say("desk.keyName.backspace");
      case "ENTER" -> Words.say("desk.keyName.enter");
      case "PAGE UP" -> Words.say("desk.keyName.pageUp");
      case "PAGE DOWN" -> Words.say("desk.keyName.pageDown");
      case "LEFT" -> "\u2190";
      case "RIGHT" -> "\u2192";
      default ->
          key.startsWith(SHIFTED)
              ? Words.say("desk.keyName.shifted", key.substring(SHIFTED.length()))
              : key.startsWith(CONTROL)
                  ? Words.say("desk.keyName.control", key.substring(CONTROL.length()))
                  : key;
    };
  }
}
