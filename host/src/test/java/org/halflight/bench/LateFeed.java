package org.halflight.bench;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.halflight.rig.LineCodec;
import org.halflight.rig.LineReader;
import org.halflight.rig.RigCommand;
import org.halflight.rig.practice.PracticeRig;

/**
 * A rig in order on a computer that is slow: each of its lines is taken long after it came, by a
 * clock that goes on with the rig. Beats go on all the time, and tell of a time long ago.
 */
final class LateFeed implements RigFeed {
  private static final double STEP_SECONDS = 0.3;

  private record Late(long atNanos, Item item) {}

  private final PracticeRig rig;
  private final long lateNanos;
  private final LineReader reader = new LineReader();
  private final byte[] buffer = new byte[4096];
  private final Deque<Item> sent = new ArrayDeque<>();
  private final Deque<Late> received = new ArrayDeque<>();
  private long nowNanos;
  private int sequence;
  private boolean closed;

  LateFeed(PracticeRig rig, double lateSeconds) {
    this.rig = rig;
    this.lateNanos = Math.round(1e9 * lateSeconds);
    send(new RigCommand.AskGreeting());
  }

  @Override
  public Optional<Item> next() {
    if (!sent.isEmpty()) {
      return Optional.of(sent.remove());
    }
    if (closed) {
      return Optional.empty();
    }
    if (received.isEmpty() || received.peek().atNanos() > nowNanos) {
      rig.rest(STEP_SECONDS);
      nowNanos += Math.round(1e9 * STEP_SECONDS);
      read();
    }
    return received.isEmpty() || received.peek().atNanos() > nowNanos
        ? Optional.empty()
        : Optional.of(received.remove().item());
  }

  private void read() {
    // The read of a thread that is interrupted does not wait for more than there is.
    Thread.currentThread().interrupt();
    for (int count = rig.read(buffer); count > 0; count = rig.read(buffer)) {
      for (String line : reader.accept(buffer, count)) {
        received.add(
            new Late(nowNanos + lateNanos, new Item.Line(new BenchEvent.Received(nowNanos, line))));
      }
    }
    Thread.interrupted();
  }

  @Override
  public void send(RigCommand command) {
    String line = LineCodec.format(sequence, command);
    sequence = (sequence + 1) & 0xFFFF;
    sent.add(new Item.Line(new BenchEvent.Sent(nowNanos, line)));
    rig.write((line + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  @Override
  public long nowNanos() {
    return nowNanos;
  }

  @Override
  public void close() {
    closed = true;
  }
}
