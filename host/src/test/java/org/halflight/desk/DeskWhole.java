package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JRadioButton;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.Proposal;
import org.halflight.desk.view.TwoText;
import org.halflight.desk.view.UserAction;
import org.halflight.session.Assembly;
import org.halflight.session.FiringCondition;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.verdict.StageRuns;
import org.halflight.verdict.TwoAtOnce;
import org.halflight.words.StageWords;

/**
 * A whole session on the practice rig by real keys: a quick look as found, stages of assembly, two
 * speeds adjusted at once, the linkage and the speeds as left. With a pedal, it does whatever a
 * pedal can. A program of its own, because it needs a display: {@link DeskTest} gives it one.
 */
final class DeskWhole {
  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final int PEDAL = KeyEvent.VK_PAUSE;
  private static final int BACK = KeyEvent.VK_SCROLL_LOCK;
  private static final int PRESSES_MOST = 600;
  private static final int FIRINGS_MOST = 14;
  private static final int FASTER = 6;
  private static final long TAP_NANOS = 300_000_000;
  private static final long HOLD_NANOS = 1_500_000_000;

  private final Path folder;
  private final boolean byPedal;
  private final DeskHand hand = new DeskHand();

  /** Faster than the clock on the wall: nobody's hands have to follow. */
  private final LongSupplier nanos;

  private DeskWhole(Path folder, boolean byPedal) {
    this.folder = folder;
    this.byPedal = byPedal;
    long start = System.nanoTime();
    nanos = () -> start + FASTER * (System.nanoTime() - start);
  }

  /** Takes a folder and, for a session by pedal, the word for it. */
  public static void main(String[] args) {
    try {
      new DeskWhole(Path.of(args[0]), List.of(args).contains("pedal")).run();
      System.out.println("WHOLE: done");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() {
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, nanos, Clock.systemUTC(), "test", 20),
        SMALL,
        false);
    if (byPedal) {
      learn();
      pedalUntil("the light is set", v -> v.light().set().isPresent());
    }
    quickLook();
    twoAtOnce();
    stages();
    asLeft();
    check(
        view().runs().stream()
            .map(RunSetup::phase)
            .distinct()
            .toList()
            .equals(List.of(Phase.AS_FOUND, Phase.ADJUSTING, Phase.AS_LEFT)),
        "all phases are there");
    hand.close();
  }

  private void learn() {
    hand.key(KeyEvent.VK_F1);
    hand.click("learn.GO");
    hand.key(KeyEvent.VK_SPACE);
    hand.await("a key that does something is refused", v -> isSaid("has a meaning already"));
    hand.key(PEDAL);
    hand.await("the pedal is learnt", v -> isSaid("is a pedal now"));
    hand.click("learn.BACK");
    hand.key(PEDAL);
    hand.await("not the same for both", v -> isSaid("is the other pedal"));
    hand.key(BACK);
    hand.await("the second is learnt", v -> isSaid("is a pedal now"));
    shot("0-learnt");
    Component keys = hand.find("keysPlace");
    Component list = hand.find("keyList");
    DeskHand.onScreen(
        () -> {
          check(
              keys.getPreferredSize().height <= keys.getHeight(), "the key list is cut off below");
          for (Component each : ((Container) list).getComponents()) {
            check(each.getPreferredSize().width <= each.getWidth(), "cut off: " + each);
          }
          return null;
        });
  }

  private void quickLook() {
    hand.key(KeyEvent.VK_F5);
    hand.choose("runWay", 1);
    shot("1-run");
    choose(Phase.AS_FOUND);
    begin();
    for (String speed : new String[] {"1/2", "1/30", "1/125", "1/500"}) {
      hand.await(speed + " is shown", v -> isShown(v, speed));
      if (speed.equals("1/30")) {
        shot("2-set-then-wind");
      }
      fire();
    }
    conditions();
    hand.await("B is shown", v -> isShown(v, "B"));
    act(KeyEvent.VK_F);
    hand.await("it is open for three seconds", v -> v.openSeconds().orElse(0) > 3);
    shot("3-held");
    act(KeyEvent.VK_F);
    hand.await("the light is set", v -> v.light().set().isPresent());
    hand.await("the largest error is asked for again", v -> v.repeat().isPresent());
    shot("4-repeat");
    check(
        NextText.of(view()).doing().equals("Again: the largest error so far"),
        NextText.of(view()).spoken());
    for (int i = 0; i < FIRINGS_MOST && !view().runDone(); i++) {
      fire();
      if (view().question().isPresent()) {
        answer();
      }
    }
    check(view().runDone(), "the run is done");
    shot("5-done");
  }

  /** A quick tap, and warmed from here on; both of the firing just made. */
  private void conditions() {
    hand.key(KeyEvent.VK_5);
    hand.await("a quick tap", v -> has(v, FiringCondition.QUICK_TAP));
    hand.key(KeyEvent.VK_2);
    hand.await("it is said", v -> v.said().filter(s -> s.text().contains("warmed")).isPresent());
    hand.key(KeyEvent.VK_9);
    hand.await("the last one, too", v -> has(v, FiringCondition.WARMED));
  }

  private static boolean has(BenchView view, FiringCondition condition) {
    return view.results().get(view.results().size() - 1).conditions().has(condition);
  }

  /**
   * The ring of the camera pinches: its stage tells, and a switch that is put back loses nothing.
   */
  private void stages() {
    hand.window().onModelCamera(camera -> camera.useFit(InventedFit.PINCHED_CASE));
    hand.key(KeyEvent.VK_F5);
    hand.choose("runWay", 2);
    choose(Phase.ADJUSTING);
    begin();
    stage(1);
    hand.key(KeyEvent.VK_U);
    hand.await("loose in the camera", v -> v.runs().size() == 4);
    hand.key(KeyEvent.VK_U);
    hand.await("ring tight; nothing was fired loose", v -> isStage(v, Assembly.Place.TIGHT));
    hand.key(KeyEvent.VK_U);
    hand.await("back on the bench, where it was fired", v -> v.runs().size() == 3 && v.runDone());
    hand.key(KeyEvent.VK_U);
    hand.key(KeyEvent.VK_U);
    hand.await("ring tight", v -> isStage(v, Assembly.Place.TIGHT));
    stage(2);
    check(
        StageRuns.of(view().results(), view().runs()).get(0).change(2).stream()
            .flatMap(change -> StageWords.sentences(change).stream())
            .anyMatch(line -> line.matches(".* cost .* stop at 1 s .*")),
        "it says what the ring does");
    shot("8-stages");
    hand.window().onModelCamera(camera -> camera.useFit(InventedFit.SOUND));
  }

  private void stage(int number) {
    for (int i = 0; i < FIRINGS_MOST && !view().runDone(); i++) {
      if (isShown(view(), "B")) {
        hold();
      } else {
        fire();
      }
    }
    check(view().runDone(), "stage " + number + " is done");
  }

  /** B is tapped first, and then held. */
  private void hold() {
    int before = view().results().size();
    // A pedal is not heard at once where something new is shown.
    rest(Pedal.UNREAD_NANOS);
    act(KeyEvent.VK_F);
    rest(view().good() > 0 ? HOLD_NANOS : TAP_NANOS);
    act(KeyEvent.VK_F);
    hand.await("it has closed", v -> v.results().size() > before);
  }

  private void rest(long least) {
    long begun = nanos.getAsLong();
    hand.await("some time has gone by", v -> nanos.getAsLong() - begun > least);
  }

  private static boolean isStage(BenchView view, Assembly.Place place) {
    return view.setup().filter(s -> s.assembly().place() == place).isPresent();
  }

  private void twoAtOnce() {
    hand.key(KeyEvent.VK_F5);
    check(
        ((JComboBox<?>) hand.find("runWay")).getSelectedIndex() == 0,
        "the quick look is over and done with");
    choose(Phase.ADJUSTING);
    hand.fill("runSpeeds", "1, 1/15");
    begin();
    hand.key(KeyEvent.VK_V);
    hand.await("two at once", v -> v.two().isPresent());
    check(
        TwoText.of(view()).orElseThrow().sides().get(1).speed().equals("1/15"),
        "the usual pair, whatever was fired last");
    fireBoth();
    shot("6-two");
    hand.key(byPedal ? KeyEvent.VK_MULTIPLY : KeyEvent.VK_A);
    hand.await("the field is there", v -> hand.window().bench().markField().isFocusOwner());
    hand.type("train cleaned");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("marked", v -> v.marks().size() == 1);
    hand.mishap("clean");
    fireBoth();
    shot("7-closer");
    TwoText text = TwoText.of(view()).orElseThrow();
    check(view().two().orElseThrow().first().change() == TwoAtOnce.Change.CLOSER, text.spoken());
    hand.key(KeyEvent.VK_V);
    hand.await("one at a time", v -> v.two().isEmpty());
  }

  private void fireBoth() {
    for (int i = 0; i < FIRINGS_MOST && !view().two().orElseThrow().isFired(); i++) {
      fire();
    }
    check(view().two().orElseThrow().isFired(), "both are fired");
  }

  /** Two speeds, one firing taken back, and the linkage by the wind keys or the number pad. */
  private void asLeft() {
    hand.window().onModelCamera(camera -> camera.adjustLinkage(ButtonLinkage.ONE_CLICK));
    hand.key(KeyEvent.VK_F5);
    choose(Phase.AS_LEFT);
    hand.fill("runSpeeds", "1/60, 1/125");
    hand.choose("runFirings", 0);
    hand.click("check.LINKAGE");
    begin();
    fire();
    takeBack();
    for (int i = 0; i < FIRINGS_MOST && !view().linkage().isUnderWay(); i++) {
      fire();
    }
    hand.await("the linkage is led", v -> v.linkage().isUnderWay());
    windKeyTooSoon();
    begun(v -> v.linkage().step().isPresent());
    for (int i = 0; i < LinkageStep.PRESSES; i++) {
      press();
    }
    hand.await("it is over", v -> !v.linkage().isUnderWay() && v.runDone());
    hand.await("it is right", v -> NumeralsText.of(v).large().equals("ONE CLICK"));
    check(
        NextText.of(view()).done(),
        view().good() + " of " + view().wanted() + ", " + NextText.of(view()).spoken());
    shot("9-one-click");
  }

  private void takeBack() {
    hand.key(byPedal ? BACK : KeyEvent.VK_BACK_SPACE);
    hand.await("it is taken back and stays", v -> rejected(v) == 1);
    hand.key(KeyEvent.VK_R);
    hand.type("my foot slipped");
    hand.key(KeyEvent.VK_ENTER);
    hand.await(
        "the reason is another",
        v ->
            v.results().stream()
                .anyMatch(f -> f.rejection().filter("my foot slipped"::equals).isPresent()));
  }

  private static long rejected(BenchView view) {
    return view.results().stream().filter(f -> f.rejection().isPresent()).count();
  }

  private void windKeyTooSoon() {
    windKey(WindState.TURNS);
    hand.await("it says what to do first", v -> !v.linkage().prompt().remark().isEmpty());
    check(view().presses().isEmpty(), "no press is counted");
  }

  private void press() {
    int before = view().presses().size();
    hand.key(KeyEvent.VK_F);
    BenchView found =
        hand.await("the wind is tried", v -> v.linkage().doFirst().contains("press "));
    windKey(found.linkage().doFirst().contains("press W") ? WindState.TURNS : WindState.LOCKED);
    hand.await("the press counts", v -> v.presses().size() == before + 1);
  }

  private void windKey(WindState wind) {
    boolean turns = wind == WindState.TURNS;
    if (byPedal) {
      hand.key(turns ? KeyEvent.VK_NUMPAD1 : KeyEvent.VK_NUMPAD0);
    } else {
      hand.key(turns ? KeyEvent.VK_W : KeyEvent.VK_O);
    }
  }

  private void choose(Phase phase) {
    JRadioButton button = (JRadioButton) hand.find("phase." + phase);
    hand.click("phase." + phase);
    hand.await(phase + " is chosen", v -> button.isSelected());
  }

  private void begin() {
    int before = view().runs().size();
    if (byPedal) {
      pedalUntil("it begins, whatever has the focus", v -> v.runs().size() > before);
    } else {
      hand.click("beginRun");
      hand.await("it begins", v -> v.runs().size() > before);
    }
  }

  private void fire() {
    int before = view().results().size();
    if (byPedal) {
      pedalUntil("a firing", v -> v.results().size() > before);
    } else {
      hand.key(KeyEvent.VK_F);
      hand.await("a firing settles", v -> v.results().size() > before);
    }
  }

  /** A pedal does not hear what is newer than a second. */
  private void begun(Predicate<BenchView> holds) {
    if (byPedal) {
      pedalUntil("the camera is set up", holds);
    } else {
      hand.key(KeyEvent.VK_SPACE);
      hand.await("the camera is set up", holds);
    }
  }

  private void answer() {
    if (byPedal) {
      pedalUntil("it is answered", v -> v.question().isEmpty());
    } else {
      hand.key(KeyEvent.VK_SPACE);
      hand.await("it is answered", v -> v.question().isEmpty());
    }
  }

  /** One press of a key, or of the pedal where it does the same. */
  private void act(int key) {
    hand.key(byPedal ? PEDAL : key);
  }

  /** Presses the pedal, again whenever there is anything new to see, until something holds. */
  private void pedalUntil(String what, Predicate<BenchView> holds) {
    for (int presses = 0; presses < PRESSES_MOST; presses++) {
      BenchView now = view();
      if (DeskHand.onScreen(() -> holds.test(now))) {
        return;
      }
      hand.key(PEDAL);
      // A camera is not fired again before it is said what came of it.
      boolean fires = Proposal.of(now).equals(Optional.of(UserAction.FIRE));
      hand.await("anything new", after -> isNew(now, after, fires));
    }
    throw new AssertionError("pressed in vain until " + what + "; the window shows " + view());
  }

  /** What is said anew is news, in the same words too: views and sentences are told by identity. */
  @SuppressWarnings("ReferenceEquality")
  private static boolean isNew(BenchView before, BenchView after, boolean fires) {
    return fires ? before.said().orElse(null) != after.said().orElse(null) : before != after;
  }

  private boolean isSaid(String words) {
    return ((JLabel) hand.find("pedalSaid")).getText().contains(words);
  }

  private static boolean isShown(BenchView view, String setting) {
    return view.shown().filter(s -> s.label().equals(setting)).isPresent();
  }

  private void shot(String name) {
    hand.shot(folder.resolve("screens"), name);
  }

  private BenchView view() {
    return DeskHand.onScreen(() -> hand.window().view().orElseThrow());
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("not as expected: " + what);
    }
  }
}
