package org.halflight.bench;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.halflight.link.Link;
import org.halflight.rig.LineCodec;
import org.halflight.rig.LineReader;
import org.halflight.rig.RigCommand;

/**
 * A link read by the caller's own thread: for a practice rig whose time goes on only as it is read,
 * so that the same seed brings the same session. Not safe for use by several threads.
 */
public final class PumpFeed implements RigFeed {
  private static final int SEQUENCES = 0x10000;

  private final Link link;
  private final LongSupplier nanos;
  private final LineReader reader = new LineReader();
  private final byte[] buffer = new byte[4096];
  private final Deque<Item> waiting = new ArrayDeque<>();
  private int sequence;
  private boolean closed;

  /**
   * @param nanos host clock, in nanoseconds from the start of the session
   */
  public PumpFeed(Link link, LongSupplier nanos) {
    this.link = link;
    this.nanos = nanos;
    send(new RigCommand.AskGreeting());
  }

  @Override
  public Optional<Item> next() {
    if (waiting.isEmpty() && !closed) {
      int count = link.read(buffer);
      for (String line : reader.accept(buffer, count)) {
        waiting.add(new Item.Line(new BenchEvent.Received(nanos.getAsLong(), line)));
      }
    }
    return Optional.ofNullable(waiting.poll());
  }

  @Override
  public void send(RigCommand command) {
    if (closed) {
      return;
    }
    String line = LineCodec.format(sequence, command);
    sequence = (sequence + 1) % SEQUENCES;
    waiting.add(new Item.Line(new BenchEvent.Sent(nanos.getAsLong(), line)));
    link.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  @Override
  public long nowNanos() {
    return nanos.getAsLong();
  }

  @Override
  public void close() {
    closed = true;
    link.close();
  }
}
