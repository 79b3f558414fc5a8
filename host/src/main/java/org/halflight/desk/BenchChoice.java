package org.halflight.desk;

import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.Cue;
import org.halflight.desk.view.Message;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.jspecify.annotations.Nullable;

/**
 * Which bench is at work: that of the rig or that of the practice rig. To change, it closes the
 * session of the one and begins a session of the other, or goes on with its run. May be used from
 * any thread.
 */
final class BenchChoice implements AutoCloseable {
  private static final long CLOSE_WAIT_SECONDS = 10;

  private final BenchFactory benches;
  private final Supplier<Consumer<BenchView>> windows;
  private final Consumer<Cue> sounds;
  private final Archive archive;
  private final Consumer<BenchLoop> onBegun;
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread one = new Thread(work, "halflight-bench-choice");
            one.setDaemon(true);
            return one;
          });
  private volatile @Nullable BenchLoop now;

  /**
   * @param windows gives for each bench what takes its views
   * @param onBegun hears of each bench before it is at work
   */
  BenchChoice(
      DeskSurroundings surroundings,
      Supplier<Consumer<BenchView>> windows,
      Consumer<Cue> sounds,
      Archive archive,
      Consumer<BenchLoop> onBegun) {
    this.benches = new BenchFactory(surroundings, this::change);
    this.windows = windows;
    this.sounds = sounds;
    this.archive = archive;
    this.onBegun = onBegun;
  }

  /**
   * A bench of the rig where a board is plugged in, and else of the practice rig. Reads and writes
   * files, so not for the window's own thread.
   */
  BenchLoop begin() {
    Source first = benches.isBoardThere() ? Source.RIG : Source.PRACTICE;
    return begin(new BenchChange(first, false, false, Optional.empty()));
  }

  private BenchLoop begin(BenchChange to) {
    return benches.begin(to, windows.get(), sounds, archive);
  }

  /** This bench is at work from now on. */
  void start(BenchLoop begun) {
    onBegun.accept(begun);
    now = begun;
    begun.start();
  }

  /** The bench at work; empty before the first and between two. */
  Optional<BenchLoop> now() {
    return Optional.ofNullable(now);
  }

  private void change(BenchChange to) {
    thread.execute(
        () -> {
          BenchLoop before = now;
          if (before != null && before.source() != to.to()) {
            change(before, to);
          }
        });
  }

  private void change(BenchLoop before, BenchChange to) {
    now = null;
    before.leave();
    archive.benchLeft(before.source(), to.keepsVisit());
    BenchLoop next;
    try {
      next = begin(to);
    } catch (Trouble cannot) {
      Message why = new Message(Message.Kind.TROUBLE, cannot.getMessage());
      next = begin(new BenchChange(before.source(), true, to.keepsVisit(), Optional.of(why)));
    }
    start(next);
    archive.benchTaken(next.source());
  }

  /** Ends the session at work. */
  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(CLOSE_WAIT_SECONDS, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    now().ifPresent(BenchLoop::close);
  }
}
