package org.halflight.workflow;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.halflight.rig.LineCodec;
import org.halflight.rig.OpenRig;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.words.Words;

/**
 * Whether a rig is wired as its firmware takes it to be, as far as it can tell: the thresholds that
 * it sets come back at A3 and, on the full rig, A4. For one thread.
 */
final class WiringLook {
  /** A threshold that reads further off than this is not wired: a tenth of the supply. */
  private static final int OFF_MOST = 6554;

  /** What a step of a threshold's code is in the sum that reads it back (protocol, V). */
  private static final int SUM_OF_A_CODE = 256;

  /** The filters of the thresholds settle within this; a busy computer may take longer to hear. */
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private static final int READS_LEAST = 12;

  /** It is asked again after so many reads, each of at most 100 ms or a line. */
  private static final int READS_AN_ANSWER = 3;

  private WiringLook() {}

  /**
   * Asks until the thresholds read right, or for a second.
   *
   * @param rig open
   * @return what to say of the wiring; empty where nothing speaks against it
   */
  static Optional<String> ask(OpenRig rig, LongSupplier nanos) {
    byte[] buffer = new byte[4096];
    int sequence = rig.nextSequence();
    Optional<String> wrong = Optional.empty();
    long start = nanos.getAsLong();
    for (int reads = 0;
        reads < READS_LEAST || nanos.getAsLong() - start < PATIENCE_NANOS;
        reads++) {
      if (reads % READS_AN_ANSWER == 0) {
        String line = LineCodec.format(sequence, new RigCommand.AskThresholds());
        rig.link().write((line + '\n').getBytes(StandardCharsets.US_ASCII));
        sequence = (sequence + 1) & 0xFFFF;
      }
      int count = rig.link().read(buffer);
      for (String text : rig.reader().accept(buffer, count)) {
        if (LineCodec.parse(text) instanceof ParsedLine.Message found
            && found.message() instanceof RigMessage.Thresholds read) {
          wrong = wrong(rig.greeting().board(), read);
          if (wrong.isEmpty()) {
            return wrong;
          }
        }
      }
    }
    return wrong;
  }

  /** What speaks against the wiring. */
  static Optional<String> wrong(BoardTraits board, RigMessage.Thresholds read) {
    if (board.fixedLevel()) {
      // Its one level is inside the chip.
      return Optional.empty();
    }
    boolean low = isThere(read.lowCode(), read.lowSum64());
    boolean high = board.oneLevel() || isThere(read.highCode(), read.highSum64());
    if (low && high) {
      return Optional.empty();
    }
    return Optional.of(Words.say(low ? "upload.wiring.small" : "upload.wiring.thresholds"));
  }

  private static boolean isThere(int code, int sum64) {
    return Math.abs((code + 1) * SUM_OF_A_CODE - sum64) <= OFF_MOST;
  }
}
