package org.halflight.rig;

import java.util.Optional;
import org.halflight.rig.RigMessage.Answer;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.Echo;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.LightBlock;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.rig.RigMessage.Result;
import org.halflight.rig.RigMessage.Thresholds;
import org.halflight.signal.Channel;

/** The fields of each kind of line from rig to host. */
final class MessageFields {
  static final String KINDS = "HEBLAQVM";

  /** Sum of 16 ten-bit readings at full scale. */
  private static final int SUM_16_MOST = 16 * 1023;

  /** Sum of 64 ten-bit readings at full scale. */
  private static final int SUM_64_MOST = 64 * 1023;

  private static final int READING_MOST = 1023;
  private static final int SERIAL_CHARACTERS_MOST = 12;
  private static final int WHOLE_TICK_DIGITS = 12;

  private MessageFields() {}

  static Optional<RigMessage> read(char kind, int sequence, FieldReader fields) {
    return switch (kind) {
      case 'H' -> greeting(sequence, fields);
      case 'E' -> edge(sequence, fields);
      case 'B' -> beat(sequence, fields);
      case 'L' -> losses(sequence, fields);
      case 'A' -> answer(sequence, fields);
      case 'Q' -> echo(sequence, fields);
      case 'V' -> thresholds(sequence, fields);
      case 'M' -> lightBlock(sequence, fields);
      default -> throw new IllegalArgumentException("no kind of message: " + kind);
    };
  }

  private static Optional<RigMessage> greeting(int sequence, FieldReader fields) {
    int protocol = fields.hex(2, 0xFF);
    long ticksPerSecond = fields.hex(8);
    // A rate of zero would make every time endless.
    fields.require(ticksPerSecond > 0);
    // Kind, channels and cause are taken as they come, so that a newer rig can be named.
    String kind = fields.word(LineCodec.LINE_CHARACTERS_MOST);
    int channels = fields.hex(2, 0xFF);
    String serial = fields.word(SERIAL_CHARACTERS_MOST);
    long bootCount = fields.hex(8);
    String resetCause = fields.word(LineCodec.LINE_CHARACTERS_MOST);
    String firmware = fields.word(LineCodec.LINE_CHARACTERS_MOST);
    long ticks = fields.hex(WHOLE_TICK_DIGITS);
    return fields.make(
        () ->
            new Greeting(
                sequence,
                protocol,
                ticksPerSecond,
                kind,
                channels,
                serial,
                bootCount,
                resetCause,
                firmware,
                ticks));
  }

  private static Optional<RigMessage> edge(int sequence, FieldReader fields) {
    Channel channel = fields.channel();
    boolean high = fields.bit();
    int low32 = (int) fields.hex(8);
    return fields.make(() -> new EdgeSeen(sequence, channel, high, low32));
  }

  private static Optional<RigMessage> beat(int sequence, FieldReader fields) {
    long ticks = fields.hex(WHOLE_TICK_DIGITS);
    int levels = fields.hex(2, 0xFF);
    int light = fields.hex(4, SUM_16_MOST);
    return fields.make(() -> new Beat(sequence, ticks, levels, light));
  }

  private static Optional<RigMessage> losses(int sequence, FieldReader fields) {
    long edges = fields.hex(8);
    int[] counts = new int[6];
    for (int i = 0; i < counts.length; i++) {
      counts[i] = fields.hex(4, 0xFFFF);
    }
    return fields.make(
        () ->
            new Losses(
                sequence, edges, counts[0], counts[1], counts[2], counts[3], counts[4], counts[5]));
  }

  private static Optional<RigMessage> answer(int sequence, FieldReader fields) {
    int commandSequence = fields.hex(4, 0xFFFF);
    Optional<Result> result = Result.ofCode(fields.hex(2, 0xFF));
    fields.require(result.isPresent());
    return fields.make(() -> new Answer(sequence, commandSequence, result.orElseThrow()));
  }

  private static Optional<RigMessage> echo(int sequence, FieldReader fields) {
    int token = fields.hex(4, 0xFFFF);
    long received = fields.hex(WHOLE_TICK_DIGITS);
    long sent = fields.hex(WHOLE_TICK_DIGITS);
    return fields.make(() -> new Echo(sequence, token, received, sent));
  }

  private static Optional<RigMessage> thresholds(int sequence, FieldReader fields) {
    int lowCode = fields.hex(2, 0xFF);
    int highCode = fields.hex(2, 0xFF);
    int low = fields.hex(4, SUM_64_MOST);
    int high = fields.hex(4, SUM_64_MOST);
    return fields.make(() -> new Thresholds(sequence, lowCode, highCode, low, high));
  }

  private static Optional<RigMessage> lightBlock(int sequence, FieldReader fields) {
    Channel channel = fields.lightSensor();
    int index = fields.hex(4, 0xFFFF);
    int sum = fields.hex(4, SUM_16_MOST);
    int least = fields.hex(3, READING_MOST);
    int most = fields.hex(3, READING_MOST);
    fields.require(least <= most);
    return fields.make(() -> new LightBlock(sequence, channel, index, sum, least, most));
  }

  static String body(RigMessage message) {
    if (message instanceof Greeting it) {
      return head('H', it)
          .hex(2, it.protocol())
          .hex(8, it.ticksPerSecond())
          .word(it.kind())
          .hex(2, it.channels())
          .word(it.serial())
          .hex(8, it.bootCount())
          .word(it.resetCause())
          .word(it.firmware())
          .hex(WHOLE_TICK_DIGITS, it.ticks())
          .body();
    }
    if (message instanceof EdgeSeen it) {
      return head('E', it)
          .hex(1, it.channel().code())
          .bit(it.high())
          .hex(8, Integer.toUnsignedLong(it.low32()))
          .body();
    }
    if (message instanceof Beat it) {
      return head('B', it)
          .hex(WHOLE_TICK_DIGITS, it.ticks())
          .hex(2, it.levels())
          .hex(4, it.lightSum16())
          .body();
    }
    if (message instanceof Losses it) {
      return head('L', it)
          .hex(8, it.edges())
          .hex(4, it.snapshotsLost())
          .hex(4, it.capturesLost())
          .hex(4, it.floods())
          .hex(4, it.badLines())
          .hex(4, it.longLines())
          .hex(4, it.bytesLost())
          .body();
    }
    if (message instanceof Answer it) {
      return head('A', it).hex(4, it.commandSequence()).hex(2, it.result().code()).body();
    }
    if (message instanceof Echo it) {
      return head('Q', it)
          .hex(4, it.token())
          .hex(WHOLE_TICK_DIGITS, it.receivedTicks())
          .hex(WHOLE_TICK_DIGITS, it.sentTicks())
          .body();
    }
    if (message instanceof Thresholds it) {
      return head('V', it)
          .hex(2, it.lowCode())
          .hex(2, it.highCode())
          .hex(4, it.lowSum64())
          .hex(4, it.highSum64())
          .body();
    }
    LightBlock it = (LightBlock) message;
    return head('M', it)
        .hex(1, it.channel().code())
        .hex(4, it.index())
        .hex(4, it.sum16())
        .hex(3, it.least())
        .hex(3, it.most())
        .body();
  }

  private static FieldWriter head(char kind, RigMessage message) {
    return new FieldWriter(kind, message.sequence());
  }
}
