package org.halflight.bench;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;

/**
 * Which lines a session file does without: those of the light meter, six hundred a second, from
 * which no result is computed. Only its requests, their answers and the light blocks are left out;
 * edges, beats and whatever else comes meanwhile stand in the file, behind a mark that says up to
 * which line of the rig some were left out. So a file grows by the beats alone, and a replay knows
 * that none was lost.
 *
 * <p>A line is left out only where it follows the one before it: a loss is seen in the file as it
 * was seen live. For one thread.
 */
final class LeftOutLines {
  /** The kind of the mark. */
  static final String KIND = "lines-left-out";

  private static final String UP_TO = "to";
  private static final int MODULUS = 0x10000;
  private static final int NONE = -1;

  private final Set<Integer> requests = new HashSet<>();
  private boolean on;
  private int last = NONE;
  private int upTo = NONE;

  /** From now on lines of the meter are left out, or none are. */
  void are(boolean leftOut) {
    on = leftOut;
    requests.clear();
  }

  /**
   * Takes a line to or from the rig.
   *
   * @param mayBe false where lines wait for the disk: their order must stay
   * @return whether the file does without it
   */
  boolean has(BenchEvent event, boolean mayBe) {
    if (event instanceof BenchEvent.Sent sent) {
      return on && mayBe && isRequest(sent);
    }
    if (!(event instanceof BenchEvent.Received received)) {
      return false;
    }
    if (!(received.rigLine().parsed() instanceof ParsedLine.Message found)) {
      last = NONE;
      return false;
    }
    RigMessage message = found.message();
    boolean follows = last != NONE && message.sequence() == (last + 1) % MODULUS;
    last = message.sequence();
    boolean leftOut = on && mayBe && follows && isOfTheMeter(message);
    upTo = leftOut ? last : upTo;
    return leftOut;
  }

  private boolean isRequest(BenchEvent.Sent sent) {
    return LineCodec.parse(sent.line()) instanceof ParsedLine.Command out
        && out.command() instanceof RigCommand.MeasureLight
        && requests.add(out.sequence());
  }

  private boolean isOfTheMeter(RigMessage message) {
    return message instanceof RigMessage.LightBlock
        || (message instanceof RigMessage.Answer answer
            && answer.result() == RigMessage.Result.DONE
            && requests.remove(answer.commandSequence()));
  }

  /** The mark that goes before the next line of the rig, once. */
  Optional<BenchEvent.Mark> mark(long hostNanos) {
    if (upTo == NONE) {
      return Optional.empty();
    }
    String to = String.format("%04X", upTo);
    upTo = NONE;
    return Optional.of(new BenchEvent.Mark(hostNanos, KIND, Map.of(UP_TO, to)));
  }

  /** The counter of the last line that a mark says was left out; empty where it makes no sense. */
  static OptionalInt upTo(BenchEvent.Mark mark) {
    String to = mark.values().getOrDefault(UP_TO, "");
    return to.matches("[0-9A-F]{4}")
        ? OptionalInt.of(Integer.parseInt(to, 16))
        : OptionalInt.empty();
  }
}
