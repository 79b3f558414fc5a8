package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.function.LongSupplier;
import javax.swing.JComboBox;
import javax.swing.JRadioButton;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.TwoText;
import org.halflight.session.Phase;
import org.halflight.verdict.TwoAtOnce;

/**
 * A quick look as found, then two speeds adjusted at once, by keys on the practice rig. A program
 * of its own, because it needs a display: {@link DeskTest} gives it one.
 */
final class DeskQuick {
  private static final Dimension SMALL = new Dimension(1366, 768);
  private static final int FIRINGS_MOST = 14;

  private final Path folder;
  private final DeskHand hand = new DeskHand();

  private DeskQuick(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) {
    try {
      new DeskQuick(Path.of(args[0])).run();
      System.out.println("QUICK: done");
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
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, fast, Clock.systemUTC(), "test", 20),
        SMALL,
        false);
    quickLook();
    twoAtOnce();
    hand.close();
  }

  private void quickLook() {
    hand.key(KeyEvent.VK_F5);
    hand.choose("run.quick", 1);
    shot("1-run");
    hand.click("beginRun");
    hand.await("it begins", v -> isShown(v, "1/2"));
    for (String speed : new String[] {"1/2", "1/30", "1/125", "1/500"}) {
      hand.await(speed + " is shown", v -> isShown(v, speed));
      if (speed.equals("1/30")) {
        shot("2-set-then-wind");
      }
      fire();
    }
    hand.await("B is shown", v -> isShown(v, "B"));
    hand.key(KeyEvent.VK_F);
    hand.await("it is open for three seconds", v -> v.openSeconds().orElse(0) > 3);
    shot("3-held");
    hand.key(KeyEvent.VK_F);
    hand.await("the light is set", v -> v.light().set().isPresent());
    hand.await("the largest error is asked for again", v -> v.repeat().isPresent());
    shot("4-repeat");
    check(
        NextText.of(view()).doing().equals("Again: the largest error so far"),
        NextText.of(view()).spoken());
    for (int i = 0; i < FIRINGS_MOST && !view().runDone(); i++) {
      fire();
      if (view().question().isPresent()) {
        hand.key(KeyEvent.VK_SPACE);
        hand.await("it is answered", v -> v.question().isEmpty());
      }
    }
    check(view().runDone(), "the run is done");
    shot("5-done");
  }

  private void twoAtOnce() {
    hand.key(KeyEvent.VK_F5);
    JRadioButton adjusting = (JRadioButton) hand.find("phase." + Phase.ADJUSTING);
    hand.click("phase." + Phase.ADJUSTING);
    hand.await("adjusting is chosen", v -> adjusting.isSelected());
    check(
        ((JComboBox<?>) hand.find("run.quick")).getSelectedIndex() == 0,
        "the quick look is over and done with");
    hand.fill("runSpeeds", "1, 1/15");
    hand.click("beginRun");
    hand.await("adjusting", v -> v.setup().filter(s -> s.phase() == Phase.ADJUSTING).isPresent());
    hand.key(KeyEvent.VK_V);
    hand.await("two at once", v -> v.two().isPresent());
    check(
        TwoText.of(view()).orElseThrow().sides().get(1).speed().equals("1/15"),
        "the usual pair, whatever was fired last");
    fireBoth();
    shot("6-two");
    hand.key(KeyEvent.VK_A);
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

  private void fire() {
    int before = view().results().size();
    hand.key(KeyEvent.VK_F);
    hand.await("a firing settles", v -> v.results().size() > before);
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
