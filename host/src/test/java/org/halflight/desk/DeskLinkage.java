package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.NumeralsText;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;

/**
 * The linkage of the invented camera tested at the window by keys: found wrong, adjusted, right. A
 * program of its own, because it needs a display: {@link DeskLinkageTest} gives it one.
 */
final class DeskLinkage {
  private static final Dimension SIZE = new Dimension(1366, 768);
  private static final int FASTER = 6;

  private final Path folder;
  private final DeskHand hand = new DeskHand();

  private DeskLinkage(Path folder) {
    this.folder = folder;
  }

  /** Does it all; ends with 0 when everything was as expected. */
  public static void main(String[] args) {
    try {
      new DeskLinkage(Path.of(args[0])).run();
      System.out.println("LINKAGE: done");
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run() throws Exception {
    long start = System.nanoTime();
    LongSupplier fast = () -> start + FASTER * (System.nanoTime() - start);
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, fast, Clock.systemUTC(), "test", 20),
        SIZE,
        true);
    setLight();
    hand.key(KeyEvent.VK_F5);
    hand.click("phase." + Phase.ADJUSTING);
    hand.fill("runSpeeds", " ");
    hand.click("check.LINKAGE");
    shot("1-form");
    hand.click("beginRun");
    hand.await("it is led", v -> v.linkage().isUnderWay());
    shot("2-set-up");
    hand.key(KeyEvent.VK_W);
    hand.await("it says what to do first", v -> !v.linkage().prompt().remark().isEmpty());
    hand.key(KeyEvent.VK_SPACE);
    press();
    hand.await("pause and let go", v -> v.linkage().step().equals(step(LinkageStep.STOP)));
    shot("3-stop");
    for (int i = 0; i < 4; i++) {
      press();
    }
    expect("ADVANCE ONLY");
    shot("4-advance-only");
    hand.key(KeyEvent.VK_F1);
    shot("5-keys");
    hand.key(KeyEvent.VK_F2);
    hand.window().onModelCamera(camera -> camera.adjustLinkage(ButtonLinkage.SHUTTER_FIRST));
    adjusted();
    press();
    press();
    expect("SHUTTER ONLY");
    shot("6-shutter-only");
    hand.window().onModelCamera(camera -> camera.adjustLinkage(ButtonLinkage.ONE_CLICK));
    adjusted();
    for (int i = 0; i < LinkageStep.PRESSES; i++) {
      press();
      if (i == LinkageStep.STOP.presses() + 3) {
        shot("7-squeeze");
      }
    }
    hand.await("it is over", v -> !v.linkage().isUnderWay());
    expect("ONE CLICK");
    shot("8-one-click");
    hand.key(KeyEvent.VK_F6);
    hand.fill("triedPlungerAdvance", "1.60");
    hand.fill("triedPlungerShutter", "1.65");
    hand.click("triedPlunger");
    hand.await("the plunger is read", v -> v.plungers().size() == 1);
    shot("9-checks");
    hand.close();
  }

  private void setLight() {
    hand.key(KeyEvent.VK_F3);
    hand.click("setLight");
    hand.await("the open shutter is asked for", v -> v.light().isAsking());
    hand.key(KeyEvent.VK_SPACE);
    hand.await("the light is set", v -> v.light().set().isPresent());
    hand.await("it is dark again", v -> v.results().size() == 1);
  }

  /** One press of the practice camera, and the wind key that it says. */
  private void press() {
    int before = view().presses().size();
    hand.key(KeyEvent.VK_F);
    BenchView found =
        hand.await("the wind is tried", v -> v.linkage().doFirst().contains("press "));
    WindState wind =
        found.linkage().doFirst().contains("press W") ? WindState.TURNS : WindState.LOCKED;
    hand.key(wind == WindState.TURNS ? KeyEvent.VK_W : KeyEvent.VK_O);
    hand.await("the press counts", v -> v.presses().size() == before + 1);
  }

  private void adjusted() {
    hand.key(KeyEvent.VK_A);
    hand.await("words are asked for", v -> hand.window().bench().markField().isFocusOwner());
    hand.type("half a turn");
    hand.key(KeyEvent.VK_ENTER);
    hand.await("it begins again", v -> v.linkage().step().equals(step(LinkageStep.REST)));
  }

  private static Optional<LinkageStep> step(LinkageStep step) {
    return Optional.of(step);
  }

  private void expect(String large) {
    hand.await(large + " is large", v -> NumeralsText.of(v).large().equals(large));
  }

  private BenchView view() {
    return DeskHand.onScreen(() -> hand.window().view().orElseThrow());
  }

  private void shot(String name) {
    hand.shot(folder.resolve("screens"), name);
  }
}
