package org.halflight.desk;

import java.awt.Dimension;
import java.awt.Toolkit;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.LastFiring;
import org.halflight.exposure.Exposure;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringPlace;
import org.halflight.session.FiringResult;

/**
 * How quick the window is on the practice rig: from the last edge of a firing to its figure in
 * pixels, and how long the window's own thread is busy with ten thousand firings. A program of its
 * own, because it needs a display. The firings are those of an invented shutter.
 */
final class DeskSpeed {
  private static final int FIRINGS = 41;
  private static final int MANY = 10_000;
  private static final int REPEATS = 40;

  private final DeskHand hand = new DeskHand();
  private final List<Double> millis = Collections.synchronizedList(new ArrayList<>());
  private final AtomicLong seenTicks = new AtomicLong(-1);

  private DeskSpeed() {}

  /** Measures and prints. */
  public static void main(String[] args) {
    try {
      new DeskSpeed().run(Path.of(args[0]));
      System.exit(0);
    } catch (Throwable failed) {
      failed.printStackTrace();
      System.exit(1);
    }
  }

  private void run(Path folder) {
    hand.open(
        new DeskSurroundings(folder, NoPorts::new, System::nanoTime, Clock.systemUTC(), "test", 20),
        new Dimension(1366, 768),
        false);
    DeskHand.onScreen(
        () -> {
          hand.window().bench().numerals().afterPaint(text -> painted());
          return null;
        });
    hand.key(KeyEvent.VK_F5);
    hand.fill("runSpeeds", "1/125, 1/60, 1/30, 1/250");
    hand.click("runFirings");
    hand.click("beginRun");
    hand.await("the run has begun", v -> v.setup().isPresent());
    for (int i = 1; i <= FIRINGS; i++) {
      int wanted = i;
      hand.key(KeyEvent.VK_F);
      hand.await("a firing settles", v -> v.results().size() >= wanted);
    }
    print("from last edge to pixels", millis);
    many();
    hand.close();
  }

  /** The pixels of a provisional figure are drawn: how long after its last edge? */
  private void painted() {
    Toolkit.getDefaultToolkit().sync();
    long now = System.nanoTime();
    Optional<BenchView> view = hand.window().view();
    if (view.isPresent()
        && view.get().last().orElse(null) instanceof LastFiring.Provisional firing
        && firing.exposure() instanceof Exposure.Timed timed
        && seenTicks.getAndSet(timed.crossings().lowFallTicks())
            != timed.crossings().lowFallTicks()) {
      long ticks = timed.crossings().lowFallTicks();
      hand.window()
          .onModelCamera(
              camera ->
                  camera.ports().onBench(rig -> millis.add((now - rig.nanosAt(ticks)) / 1e6)));
    }
  }

  /** Ten thousand firings of one camera: how long the window's thread is busy with each new one. */
  private void many() {
    BenchView view = DeskHand.onScreen(() -> hand.window().view().orElseThrow());
    List<FiringResult> results = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      FiringResult like = view.results().get(i % view.results().size());
      results.add(
          new FiringResult(
              i + 1,
              new FiringKey(like.key().rigSerial(), 1, i),
              like.firing(),
              like.rate(),
              new FiringPlace(
                  like.run(),
                  like.setting(),
                  like.reference(),
                  like.phase(),
                  like.afterRest() && i == 0),
              like.outcome(),
              like.exposure(),
              like.measuredWith(),
              like.notes(),
              Optional.empty()));
    }
    List<Double> busy = new ArrayList<>();
    for (int i = 0; i < REPEATS; i++) {
      results.add(results.get(results.size() - 1));
      BenchView more =
          new BenchView(
              view.link(),
              view.light(),
              view.setup(),
              view.run(),
              view.camera(),
              view.dial(),
              view.shown(),
              view.good(),
              view.wanted(),
              view.repeat(),
              view.runDone(),
              view.justDone(),
              view.last(),
              view.openSeconds(),
              results,
              view.question(),
              view.marks(),
              view.turns(),
              view.step(),
              view.two(),
              view.runs(),
              view.cocking(),
              view.capOn(),
              view.conditions(),
              view.said(),
              view.rig(),
              view.readings(),
              view.presses(),
              view.plungers(),
              view.lightTest(),
              view.linkage(),
              view.undo());
      long begin = System.nanoTime();
      DeskHand.onScreen(
          () -> {
            hand.window().bench().show(more);
            hand.window().bench().showPictures();
            hand.window().bench().paintImmediately(0, 0, 1366, 700);
            return null;
          });
      busy.add((System.nanoTime() - begin) / 1e6);
      hand.await("the pictures are drawn", v -> hand.window().bench().isUpToDate());
    }
    print("window's thread busy with one firing more among " + MANY, busy);
  }

  private static void print(String what, List<Double> millis) {
    List<Double> sorted = millis.stream().sorted().toList();
    System.out.println(
        String.format(
            Locale.ROOT,
            "%s: median %.1f ms, greatest %.1f ms of %d (practice rig, simulated firings)",
            what,
            sorted.get(sorted.size() / 2),
            sorted.get(sorted.size() - 1),
            sorted.size()));
  }
}
