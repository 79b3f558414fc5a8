package org.halflight.cli;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.halflight.bench.RigFeed;
import org.halflight.rig.RigCommand;

/**
 * A feed that hears the person while work goes on: {@code q} stops it, and when the program is
 * ended from outside (Ctrl-C, or the system shuts down), the work gets the time to leave the rig in
 * order.
 */
final class StoppableFeed implements RigFeed {
  /** What the rig may take to be left in order. */
  private static final long ENDS_WITHIN_SECONDS = 5;

  private final RigFeed feed;
  private final Terminal terminal;
  private final CountDownLatch closed = new CountDownLatch(1);
  private Runnable stop = () -> {};

  StoppableFeed(RigFeed feed, Terminal terminal) {
    this.feed = feed;
    this.terminal = terminal;
  }

  /** What stops the work. */
  void stops(Runnable work) {
    stop = work;
  }

  /** The program is being ended: stops the work and waits until it has let go of the rig. */
  void programEnds() {
    if (closed.getCount() == 0) {
      return;
    }
    stop.run();
    try {
      closed.await(ENDS_WITHIN_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public Optional<Item> next() {
    if (terminal.typed().filter("q"::equals).isPresent()) {
      stop.run();
    }
    return feed.next();
  }

  @Override
  public void send(RigCommand command) {
    feed.send(command);
  }

  @Override
  public long nowNanos() {
    return feed.nowNanos();
  }

  @Override
  public void close() {
    feed.close();
    closed.countDown();
  }
}
