package org.halflight.rig.practice;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.List;
import java.util.function.IntFunction;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Result;

/**
 * The board's serial transmitter at 250000 baud: counts lines, and a line can be read once its last
 * bit is out. Messages are given without their line counter.
 */
final class Sender {
  /** Ten bits at 250000 baud on a 16 MHz clock. */
  static final long TICKS_PER_BYTE = 640;

  /** Blocks that wait for the transmitter; those beyond are skipped. */
  private static final int BLOCKS_KEPT_MOST = 40;

  /** What blocks that wait take at most: a line of light has 32 bytes. */
  static final long BLOCKS_TICKS_MOST = BLOCKS_KEPT_MOST * 32 * TICKS_PER_BYTE;

  private record Waiting(long readyTicks, String line) {}

  private final BoardLife life;
  private final ArrayDeque<Waiting> queue = new ArrayDeque<>();
  private final ArrayDeque<IntFunction<RigMessage>> curveLines = new ArrayDeque<>();
  private final ArrayDeque<IntFunction<RigMessage>> blocks = new ArrayDeque<>();
  private boolean sendingLight;
  private int sequence;
  private long freeTicks;

  Sender(BoardLife life) {
    this.life = life;
  }

  /** Puts a message behind those that wait. */
  void send(IntFunction<RigMessage> message) {
    String ended = LineCodec.format(message.apply(sequence)) + "\n";
    sequence = (sequence + 1) & 0xFFFF;
    freeTicks = firstByteTicks() + ended.length() * TICKS_PER_BYTE;
    queue.add(new Waiting(freeTicks, ended));
  }

  void answer(int commandSequence, Result result) {
    send(at -> new RigMessage.Answer(at, commandSequence, result));
  }

  /** When the first byte of a line would go out that is sent now. */
  long firstByteTicks() {
    return Math.max(freeTicks, life.now());
  }

  /** When the next line is out; the greatest long when none waits. */
  long nextReadyTicks() {
    Waiting next = queue.peek();
    return next == null ? Long.MAX_VALUE : next.readyTicks();
  }

  /** The next line, with its line end. */
  byte[] nextLine() {
    return queue.remove().line().getBytes(StandardCharsets.US_ASCII);
  }

  /** Sends the lines of a curve once no other line waits. */
  void sendCurve(List<IntFunction<RigMessage>> lines) {
    curveLines.addAll(lines);
    beginSendingLight();
  }

  /** Sends a block of light once no other line waits, or skips it when too many wait. */
  void sendBlock(IntFunction<RigMessage> block) {
    // At 250000 baud a line of light takes longer than a block: in time some are skipped.
    if (blocks.size() < BLOCKS_KEPT_MOST) {
      blocks.add(block);
      beginSendingLight();
    }
  }

  void forgetBlocks() {
    blocks.clear();
  }

  private void beginSendingLight() {
    if (!sendingLight) {
      sendingLight = true;
      sendNextOfTheLight();
    }
  }

  /** Light goes last: curves and blocks are sent only when no other line waits. */
  private void sendNextOfTheLight() {
    long free = firstByteTicks();
    if (free > life.now()) {
      life.later(free, this::sendNextOfTheLight);
    } else if (curveLines.isEmpty() && blocks.isEmpty()) {
      sendingLight = false;
    } else {
      send(curveLines.isEmpty() ? blocks.remove() : curveLines.remove());
      life.later(firstByteTicks(), this::sendNextOfTheLight);
    }
  }
}
