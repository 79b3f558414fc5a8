package org.halflight.rig.practice;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;

/** The board's serial transmitter at 250000 baud: a line can be read once its last bit is out. */
final class Sender {
  /** Ten bits at 250000 baud on a 16 MHz clock. */
  static final long TICKS_PER_BYTE = 640;

  private record Waiting(long readyTicks, String line) {}

  private final ArrayDeque<Waiting> queue = new ArrayDeque<>();
  private long freeTicks;

  /** Puts a line, given without line end, behind those that wait. */
  void send(String line, long nowTicks) {
    String ended = line + "\n";
    freeTicks = Math.max(freeTicks, nowTicks) + ended.length() * TICKS_PER_BYTE;
    queue.add(new Waiting(freeTicks, ended));
  }

  /** When the first byte of a line would go out that is sent now. */
  long firstByteTicks(long nowTicks) {
    return Math.max(freeTicks, nowTicks);
  }

  /** When the next line is out; the greatest long when none waits. */
  long nextReadyTicks() {
    Waiting next = queue.peek();
    return next == null ? Long.MAX_VALUE : next.readyTicks();
  }

  /** The next line, with its line end. */
  byte[] take() {
    return queue.remove().line().getBytes(StandardCharsets.US_ASCII);
  }
}
