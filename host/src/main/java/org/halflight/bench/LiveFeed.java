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
import org.halflight.rig.RigWish;

/** A rig on a port, found again under any name when its cable was pulled. For one consumer. */
public final class LiveFeed implements RigFeed {
  private static final long WAIT_MILLIS = 100;

  private final BlockingQueue<Item> queue = new LinkedBlockingQueue<>();
  private final RigConnection connection;

  /**
   * Begins to look for the rig.
   *
   * @param nanos host clock, in nanoseconds from the start of the session
   */
  public LiveFeed(Ports ports, RigWish wish, LongSupplier nanos) {
    connection =
        new RigConnection(
            ports,
            wish,
            new RigConnection.Listener() {
              @Override
              public void received(long hostNanos, String line) {
                queue.add(new Item.Line(new BenchEvent.Received(hostNanos, line)));
              }

              @Override
              public void sent(long hostNanos, String line) {
                queue.add(new Item.Line(new BenchEvent.Sent(hostNanos, line)));
              }

              @Override
              public void changed(LinkChange change) {
                queue.add(new Item.Changed(change));
              }
            },
            nanos);
    connection.start();
  }

  @Override
  public Optional<Item> next() {
    try {
      return Optional.ofNullable(queue.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  @Override
  @SuppressWarnings("FutureReturnValueIgnored") // The answer comes as a line, like all else.
  public void send(RigCommand command) {
    connection.send(command);
  }

  @Override
  public void close() {
    connection.close();
  }
}
