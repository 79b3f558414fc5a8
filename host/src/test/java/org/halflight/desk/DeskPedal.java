package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Predicate;
import javax.swing.JLabel;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.Proposal;
import org.halflight.desk.view.UserAction;
import org.halflight.session.Outcome;

/**
 * A short run on the practice rig with nothing but two keys that stand for pedals, once they are
 * learnt. A program of its own, because it needs a display: {@link DeskTest} gives it one.
 */
final class DeskPedal {
  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final int PEDAL = KeyEvent.VK_PAUSE;
  private static final int BACK = KeyEvent.VK_SCROLL_LOCK;
  private static final int PRESSES_MOST = 600;

  private final Path folder;
  private final DeskHand hand = new DeskHand();

  private DeskPedal(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) {
    try {
      new DeskPedal(Path.of(args[0])).run();
      System.out.println("PEDAL: done");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() {
    // Four times as fast as the clock on the wall: nobody's hands have to follow.
    long start = System.nanoTime();
    LongSupplier fast = () -> start + 4 * (System.nanoTime() - start);
    DeskSurroundings surroundings =
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, fast, Clock.systemUTC(), "test", 20);
    hand.open(surroundings, SMALL, false);
    learn();
    setLightAndBegin();
    runWithOneTakenBack();
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
    shot("1-learnt");
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

  private void setLightAndBegin() {
    pedalUntil("the light is set", v -> v.light().set().isPresent());
    pedalUntil("a run is set up", v -> hand.find("beginRun").isShowing());
    hand.fill("runSpeeds", "1/60, 1/125");
    hand.choose("runFirings", 0);
    shot("2-run");
    pedalUntil("it begins, though a text field has the focus", v -> v.setup().isPresent());
  }

  private void runWithOneTakenBack() {
    pedalUntil("a firing", v -> v.good() == 1);
    check(
        KeyHints.withPedal(view()).stream().anyMatch(hint -> hint.key().endsWith("or pedal")),
        "the key bar says what the pedal does");
    hand.key(BACK);
    hand.await(
        "it is taken back and stays",
        v -> v.results().stream().filter(f -> f.rejection().isPresent()).count() == 1);
    pedalUntil("another one", v -> v.good() == 1);
    shot("3-taken-back");
    hand.key(KeyEvent.VK_R);
    hand.type("my foot slipped");
    hand.key(KeyEvent.VK_ENTER);
    hand.await(
        "the reason is another",
        v ->
            v.results().stream()
                .anyMatch(f -> f.rejection().filter("my foot slipped"::equals).isPresent()));
    pedalUntil("the run is done", BenchView::runDone);
    shot("4-done");
    check(
        view().results().stream().filter(f -> f.rejection().isPresent()).count() == 1
            && view().results().stream().noneMatch(f -> f.outcome() == Outcome.DOUBLE),
        "nothing else was taken out");
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
      hand.await(
          "anything new", v -> fires ? v.said().orElse(null) != now.said().orElse(null) : v != now);
    }
    throw new AssertionError("pressed in vain until " + what + "; the window shows " + view());
  }

  private boolean isSaid(String words) {
    return ((JLabel) hand.find("pedalSaid")).getText().contains(words);
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
