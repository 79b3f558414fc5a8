package org.halflight.desk;

import java.awt.Dimension;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.function.LongSupplier;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.LastFiring;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTiming.Verdict;
import org.halflight.session.Phase;

/**
 * The linkage of the invented camera set at the window: out, turned by its screw between the
 * trials, good. A program of its own, because it needs a display: {@link DeskLinkageTest} gives it
 * one.
 */
final class DeskLinkage {
  private static final Dimension SIZE = new Dimension(1366, 768);

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
    LongSupplier fast = () -> start + 2 * (System.nanoTime() - start);
    hand.open(
        new DeskSurroundings(
            folder.resolve("data"), NoPorts::new, fast, Clock.systemUTC(), "test", 20),
        SIZE,
        false);
    setLight();
    hand.key(KeyEvent.VK_F5);
    hand.click("phase." + Phase.ADJUSTING);
    hand.fill("runSpeeds", " ");
    hand.click("check.RELEASE_ALONE");
    hand.click("check.WIND_AND_RELEASE");
    hand.fill("run.linkage", "3..0");
    hand.click("beginRun");
    shot("1-form");
    if (view().setup().isPresent()) {
      throw new AssertionError("limits from high to low were taken");
    }
    hand.fill("run.linkage", "0.5..3.5");
    hand.click("beginRun");
    hand.await("adjusting", v -> v.setup().filter(s -> s.phase() == Phase.ADJUSTING).isPresent());
    for (int i = 0; i < 3; i++) {
      fire();
    }
    shot("2-alone");
    expect(Verdict.TOO_EARLY);
    shot("3-early");
    for (int turn = 0; turn < 6; turn++) {
      hand.mishap("linkageLater");
    }
    expect(Verdict.NOT_TOLD);
    shot("4-hidden");
    for (int turn = 0; turn < 2; turn++) {
      hand.mishap("linkageEarlier");
    }
    expect(Verdict.GOOD);
    shot("5-good");
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

  /** One trial, and how it stands. */
  private void expect(Verdict verdict) {
    fire();
    AdvanceTiming linkage = view().last().flatMap(LastFiring::tried).orElseThrow();
    if (linkage.verdict() != verdict) {
      throw new AssertionError(linkage.verdict() + " instead of " + verdict);
    }
  }

  private void fire() {
    int before = view().results().size();
    hand.key(KeyEvent.VK_F);
    hand.await("a firing settles", v -> v.results().size() > before);
  }

  private BenchView view() {
    return DeskHand.onScreen(() -> hand.window().view().orElseThrow());
  }

  private void shot(String name) {
    for (boolean dark : List.of(false, true)) {
      if (dark) {
        hand.key(KeyEvent.VK_F9);
        hand.await("the look is another", v -> hand.window().isDark());
      }
      hand.shot(folder.resolve("screens"), name + (dark ? "-dark" : "-light"));
    }
    hand.key(KeyEvent.VK_F9);
    hand.await("light again", v -> !hand.window().isDark());
  }
}
