package org.halflight.rig;

import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/** What a rig says; one record a kind of line of docs/protocol.md. */
public sealed interface RigMessage {
  /** Line counter of the rig, 0 to 65535. */
  int sequence();

  /** A message that says all by itself, whatever lines are around it. */
  sealed interface AsItCame extends RigMessage, RigEvent {}

  /**
   * The first line after a start, and the answer to the question for it.
   *
   * @param protocol version of the protocol
   * @param ticksPerSecond tick rate
   * @param kind {@code full}, {@code small} or {@code starter}
   * @param channels mask of the channels that exist
   * @param serial rig serial number, {@code none} or {@code damaged}
   * @param bootCount how often the board has started
   * @param resetCause why it last started
   * @param firmware its version
   * @param ticks now, 48 bits
   */
  record Greeting(
      int sequence,
      int protocol,
      long ticksPerSecond,
      String kind,
      int channels,
      String serial,
      long bootCount,
      String resetCause,
      String firmware,
      long ticks)
      implements AsItCame {
    /** What this kind of board brings with it. */
    public BoardTraits board() {
      BoardTraits.Kind its =
          kind.equals(BoardTraits.Kind.WORDS.word(BoardTraits.Kind.STARTER))
              ? BoardTraits.Kind.STARTER
              : has(Channel.CENTRE_HIGH) ? BoardTraits.Kind.FULL : BoardTraits.Kind.SMALL;
      return new BoardTraits(new TickRate(ticksPerSecond), its, has(Channel.KNOB));
    }

    private boolean has(Channel channel) {
      return (channels & 1 << channel.code()) != 0;
    }
  }

  /**
   * An edge.
   *
   * @param low32 the low 32 bits of its ticks
   */
  record EdgeSeen(int sequence, Channel channel, boolean high, int low32) implements RigMessage {}

  /**
   * The heartbeat.
   *
   * @param ticks now, 48 bits
   * @param levels mask of the channels that are high now
   * @param lightSum16 centre light, sum of 16 ten-bit readings
   */
  record Beat(int sequence, long ticks, int levels, int lightSum16) implements RigMessage {}

  /** Counters of everything seen and lost since the start of the board. */
  record Losses(
      int sequence,
      long edges,
      int snapshotsLost,
      int capturesLost,
      int floods,
      int badLines,
      int longLines,
      int bytesLost)
      implements RigMessage {}

  /**
   * The result of a command.
   *
   * @param commandSequence line counter of the command that is answered
   */
  record Answer(int sequence, int commandSequence, Result result) implements AsItCame {}

  /** Results of a command. */
  enum Result {
    DONE(0),
    UNKNOWN_COMMAND(1),
    BAD_FIELDS(2),
    BUSY(3),
    STORE_FAILED(4),
    NOT_ON_THIS_RIG(5);

    private final int code;

    Result(int code) {
      this.code = code;
    }

    /** The number of this result on the wire. */
    public int code() {
      return code;
    }
  }

  /** The echo of a ping; both ticks are 48 bits. */
  record Echo(int sequence, int token, long receivedTicks, long sentTicks) implements RigMessage {}

  /**
   * Thresholds read back.
   *
   * @param lowSum64 voltage at the low comparator, sum of 64 ten-bit readings
   * @param highSum64 likewise at the high one
   */
  record Thresholds(int sequence, int lowCode, int highCode, int lowSum64, int highSum64)
      implements AsItCame {}

  /**
   * One millisecond of light: 16 readings, 62.5 us apart.
   *
   * @param index number of the block within the request; a gap means skipped blocks
   * @param sum16 sum of the readings
   * @param least the least ten-bit reading
   * @param most the greatest
   */
  record LightBlock(int sequence, Channel channel, int index, int sum16, int least, int most)
      implements AsItCame {}

  /**
   * The head of a part of a light curve; its values follow as {@link CurveValues}.
   *
   * @param sensor whose light it is
   * @param curve number of the curve, 0 to 255; all parts of one curve share it
   * @param first32 low 32 bits of the ticks of the first value, or of its span on the plateau
   * @param periodTicks from one value to the next, above 0
   * @param count how many values follow, 0 to 65535
   * @param last whether no part of this curve follows
   * @param gapBefore whether values are missing between the part before and this one
   * @param cutOff whether the rig stopped before it was dark again
   */
  record CurvePart(
      int sequence,
      Channel sensor,
      int curve,
      SampledLight.Kind part,
      int first32,
      long periodTicks,
      int count,
      boolean last,
      boolean gapBefore,
      boolean cutOff)
      implements RigMessage {}

  /**
   * Values of the part of a light curve whose head came last.
   *
   * @param index of the first of them within the part
   * @param digits the values in hexadecimal digits, two each in a window and four on the plateau:
   *     only the head of the part tells which
   */
  record CurveValues(int sequence, int curve, int index, String digits) implements RigMessage {}

  /**
   * A pulse of the reference LED is over.
   *
   * @param index number of the pulse within the request
   * @param begin32 low 32 bits of the ticks at which the timer switched the LED on
   * @param end32 likewise off
   */
  record PulseMade(int sequence, int index, ReferenceDrive drive, int begin32, int end32)
      implements RigMessage {}

  /**
   * Where a comparator of the centre sensor switched while its threshold was swept through steady
   * light.
   *
   * @param channel the low or the high level
   * @param rising whether the threshold was on its way up
   * @param fineCode the fine threshold code at the switch, 16 to 4095, 0 when it did not switch;
   *     {@code fineCode / 4096} of the supply
   * @param levelSum64 the threshold read back there, sum of 64 ten-bit readings
   * @param lightSum16 the light there, sum of 16 ten-bit readings
   */
  record TripPoint(
      int sequence, Channel channel, boolean rising, int fineCode, int levelSum64, int lightSum16)
      implements AsItCame {}
}
