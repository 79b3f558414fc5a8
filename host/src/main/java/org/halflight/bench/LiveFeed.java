package org.halflight.bench;

import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.halflight.link.Ports;
import org.halflight.rig.LinkChange;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigConnection;
import org.halflight.rig.RigLine;
import org.halflight.rig.RigSelector;

/** A rig on a port, found again under any name when its cable was pulled. For one consumer. */
public final class LiveFeed implements RigFeed {
  private static final long WAIT_MILLIS = 100;

  /** Empty entries only wake who waits. */
  private final BlockingQueue<Optional<Item>> queue = new LinkedBlockingQueue<>();

  private final RigConnection connection;
  private final LongSupplier nanos;

  /**
   * Begins to look for the rig.
   *
   * @param nanos host clock, in nanoseconds from the start of the session
   */
  public LiveFeed(Ports ports, RigSelector wish, LongSupplier nanos) {
    this.nanos = nanos;
    connection =
        new RigConnection(
            ports,
            wish,
            new RigConnection.Listener() {
              @Override
              public void received(long hostNanos, RigLine line) {
                queue.add(Optional.of(new Item.Line(new BenchEvent.Received(hostNanos, line))));
              }

              @Override
              public void sent(long hostNanos, String line) {
                queue.add(Optional.of(new Item.Line(new BenchEvent.Sent(hostNanos, line))));
              }

              @Override
              public void changed(LinkChange change) {
                queue.add(Optional.of(new Item.Changed(change)));
              }
            },
            nanos);
    connection.start();
  }

  @Override
  public Optional<Item> next() {
    try {
      Optional<Item> came = queue.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS);
      return came == null ? Optional.empty() : came;
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  /** Lets {@link #next} give back empty at once, so that its thread can do something else. */
  public void wake() {
    queue.add(Optional.empty());
  }

  /**
   * Has something done with the ports while the rig is let go, and looks for the rig again.
   *
   * @param errand done on another thread, soon; it must not throw, and ends when its work is
   *     stopped
   */
  public void withoutRig(Runnable errand) {
    connection.withoutRig(errand);
  }

  /** Looks again at all ports; see {@link RigConnection#searchAgain}. */
  public void searchAgain(RigSelector forRig) {
    connection.searchAgain(forRig);
  }

  @Override
  @SuppressWarnings("FutureReturnValueIgnored") // The answer comes as a line, like all else.
  public void send(RigCommand command) {
    connection
        .send(command)
        .whenComplete(
            (answer, trouble) -> {
              if (trouble != null) {
                queue.add(Optional.of(new Item.Unanswered(command)));
              }
            });
  }

  @Override
  public long nowNanos() {
    return nanos.getAsLong();
  }

  @Override
  public void close() {
    connection.close();
  }
}
