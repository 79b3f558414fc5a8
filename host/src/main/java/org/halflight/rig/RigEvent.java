package org.halflight.rig;

import java.util.OptionalLong;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;

/**
 * Something that the lines of a rig say, after they were checked and put into whole ticks. A
 * message that needs nothing of that is an event by itself.
 */
public sealed interface RigEvent
    permits RigEvent.EdgeAt,
        RigEvent.TimeAt,
        RigEvent.LinesLost,
        RigEvent.EdgesCounted,
        RigEvent.Contradicted,
        RigEvent.EdgesLost,
        RigEvent.Restarted,
        RigEvent.Echoed,
        RigEvent.CurveSeen,
        RigEvent.PulseMade,
        RigEvent.Ignored,
        RigMessage.AsItCame {
  /**
   * An edge. Edges of one channel come in order, those of different channels up to 20 ms out of it:
   * sort by ticks.
   */
  record EdgeAt(Edge edge) implements RigEvent {}

  /**
   * A beat: the rig was there at this time. All edges of before came already, except perhaps some
   * of the last 20 ms.
   *
   * @param ticks when
   * @param levels bit n is the level of the channel with code n
   * @param lightSum16 centre light, sum of 16 ten-bit readings
   */
  record TimeAt(long ticks, int levels, int lightSum16) implements RigEvent {}

  /**
   * Lines of the rig are missing, and edges may have been among them.
   *
   * @param count how many; at least so many when the rig started anew behind the gap
   */
  record LinesLost(int count) implements RigEvent {}

  /**
   * The rig's count of edges is held against those that came, where lines went missing since it was
   * last told.
   *
   * @param allCame whether none was among the missing lines; else one was, or nobody knows
   */
  record EdgesCounted(boolean allCame) implements RigEvent {}

  /**
   * The rig said what cannot be, though every line came whole: one of the last lines is wrong, and
   * nobody knows which.
   *
   * @param sinceTicks what came since then, up to the next beat, is not to be trusted; empty where
   *     no time of before is sure
   */
  record Contradicted(OptionalLong sinceTicks) implements RigEvent {}

  /** The rig lost edges, or switched an input off for a while, since its last counters. */
  record EdgesLost() implements RigEvent {}

  /**
   * The rig started anew: ticks start again near zero, and all edges after this are of the new
   * start. {@link RigMessage.Greeting} follows at once when the greeting came through.
   */
  record Restarted() implements RigEvent {}

  /**
   * The echo of a ping.
   *
   * @param token as it was sent
   * @param receivedTicks when the rig had the ping
   * @param sentTicks when it began to send the echo
   */
  record Echoed(int token, long receivedTicks, long sentTicks) implements RigEvent {}

  /**
   * The light of one opening, whole or as much of it as came; see {@link SampledLight} for what
   * lost values look like.
   */
  record CurveSeen(SampledLight light) implements RigEvent {}

  /**
   * A pulse of the reference LED is over.
   *
   * @param index number of the pulse within the request
   * @param drive square or ramped
   * @param beginTicks when the timer switched the LED on
   * @param endTicks when it switched it off
   */
  record PulseMade(int index, ReferenceDrive drive, long beginTicks, long endTicks)
      implements RigEvent {}

  /**
   * A line that says nothing.
   *
   * @param why it was left out
   * @param line the line
   */
  record Ignored(Why why, String line) implements RigEvent {}

  /** Why a line was left out. */
  enum Why {
    /** Over 96 bytes. */
    TOO_LONG,
    /** Not of the form of a line. */
    FORM,
    /** Damaged on the way. */
    CRC,
    /** Its fields are not those of its kind. */
    FIELDS,
    /** Well formed, of a kind that this program does not know. */
    UNKNOWN_KIND,
    /** A line of a host: something sends back what it hears. */
    COMMAND,
    /** Came before, word for word. */
    REPEATED,
    /** An edge whose whole ticks can no longer be known. */
    EDGE_WITHOUT_TIME,
    /** Says what cannot be beside the lines around it. */
    IMPOSSIBLE
  }
}
