package org.halflight.rig;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.rig.RigMessage.Answer;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.CurvePart;
import org.halflight.rig.RigMessage.CurveValues;
import org.halflight.rig.RigMessage.Echo;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.LightBlock;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.rig.RigMessage.PulseMade;
import org.halflight.rig.RigMessage.Result;
import org.halflight.rig.RigMessage.Thresholds;
import org.halflight.rig.RigMessage.TripPoint;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;

/** The fields of each kind of line from rig to host. */
final class MessageFields {
  static final String KINDS = "HEBLAQVMCDRW";

  /** Sum of 16 ten-bit readings at full scale. */
  private static final int SUM_16_MOST = 16 * 1023;

  /** Sum of 64 ten-bit readings at full scale. */
  private static final int SUM_64_MOST = 64 * 1023;

  private static final int READING_MOST = 1023;
  private static final int SERIAL_CHARACTERS_MOST = 12;
  private static final int WHOLE_TICK_DIGITS = 12;
  private static final int VALUE_DIGITS_MOST = 64;

  /** The parts of a light curve by their number on the wire. */
  private static final List<SampledLight.Kind> PARTS =
      List.of(
          SampledLight.Kind.OPENING,
          SampledLight.Kind.PLATEAU,
          SampledLight.Kind.CLOSING,
          SampledLight.Kind.TAIL);

  /** A window has 62500 values a second. */
  private static final long WINDOW_PERIOD_TICKS = 256;

  private static final int LAST = 1;
  private static final int GAP_BEFORE = 2;
  private static final int CUT_OFF = 4;

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
      case 'C' -> curvePart(sequence, fields);
      case 'D' -> curveValues(sequence, fields);
      case 'R' -> pulseMade(sequence, fields);
      case 'W' -> tripPoint(sequence, fields);
      default -> throw new IllegalArgumentException("no kind of message: " + kind);
    };
  }

  private static Optional<RigMessage> greeting(int sequence, FieldReader fields) {
    int protocol = fields.hex(2, 0xFF);
    long ticksPerSecond = fields.hex(8);
    // Another rate would make every time false, or endless.
    fields.require(ClockClass.has(ticksPerSecond));
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

  private static Optional<RigMessage> curvePart(int sequence, FieldReader fields) {
    int curve = fields.hex(2, 0xFF);
    SampledLight.Kind part = PARTS.get(fields.hex(1, 3));
    int first32 = (int) fields.hex(8);
    long periodTicks = fields.hex(8);
    // Another time between values would make every figure of the curve false.
    fields.require(
        part.isOfMeans()
            ? periodTicks >= WINDOW_PERIOD_TICKS && Long.bitCount(periodTicks) == 1
            : periodTicks == WINDOW_PERIOD_TICKS);
    int count = fields.hex(4, 0xFFFF);
    int flags = fields.hex(2, LAST | GAP_BEFORE | CUT_OFF);
    return fields.make(
        () ->
            new CurvePart(
                sequence,
                curve,
                part,
                first32,
                periodTicks,
                count,
                (flags & LAST) != 0,
                (flags & GAP_BEFORE) != 0,
                (flags & CUT_OFF) != 0));
  }

  private static Optional<RigMessage> curveValues(int sequence, FieldReader fields) {
    int curve = fields.hex(2, 0xFF);
    int index = fields.hex(4, 0xFFFF);
    String digits = fields.word(VALUE_DIGITS_MOST).toUpperCase(Locale.ROOT);
    fields.require(areValues(digits));
    return fields.make(() -> new CurveValues(sequence, curve, index, digits));
  }

  private static boolean areValues(String digits) {
    return !digits.isEmpty()
        && digits.length() <= VALUE_DIGITS_MOST
        && digits.length() % 2 == 0
        && digits.chars().allMatch(c -> FieldReader.isHexDigit((char) c));
  }

  private static Optional<RigMessage> pulseMade(int sequence, FieldReader fields) {
    int index = fields.hex(4, 0xFFFF);
    Optional<ReferenceDrive> drive = ReferenceDrive.ofCode(fields.hex(1, 0xF));
    fields.require(drive.filter(ReferenceDrive::isPulsed).isPresent());
    int begin32 = (int) fields.hex(8);
    int end32 = (int) fields.hex(8);
    return fields.make(() -> new PulseMade(sequence, index, drive.orElseThrow(), begin32, end32));
  }

  private static Optional<RigMessage> tripPoint(int sequence, FieldReader fields) {
    Channel channel = fields.channel();
    fields.require(channel == Channel.CENTRE_LOW || channel == Channel.CENTRE_HIGH);
    boolean rising = fields.bit();
    int fineCode = fields.hex(4, RigCommand.SweepThreshold.CODE_MOST);
    fields.require(fineCode == 0 || fineCode >= RigCommand.SweepThreshold.CODE_LEAST);
    int level = fields.hex(4, SUM_64_MOST);
    int light = fields.hex(4, SUM_16_MOST);
    return fields.make(() -> new TripPoint(sequence, channel, rising, fineCode, level, light));
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
    if (message instanceof LightBlock it) {
      return head('M', it)
          .hex(1, it.channel().code())
          .hex(4, it.index())
          .hex(4, it.sum16())
          .hex(3, it.least())
          .hex(3, it.most())
          .body();
    }
    if (message instanceof CurvePart it) {
      int flags =
          (it.last() ? LAST : 0) | (it.gapBefore() ? GAP_BEFORE : 0) | (it.cutOff() ? CUT_OFF : 0);
      return head('C', it)
          .hex(2, it.curve())
          .hex(1, PARTS.indexOf(it.part()))
          .hex(8, Integer.toUnsignedLong(it.first32()))
          .hex(8, it.periodTicks())
          .hex(4, it.count())
          .hex(2, flags)
          .body();
    }
    if (message instanceof CurveValues it) {
      if (!areValues(it.digits())) {
        throw new IllegalArgumentException("not values of a light curve: '" + it.digits() + "'");
      }
      return head('D', it).hex(2, it.curve()).hex(4, it.index()).word(it.digits()).body();
    }
    if (message instanceof PulseMade it) {
      return head('R', it)
          .hex(4, it.index())
          .hex(1, it.drive().code())
          .hex(8, Integer.toUnsignedLong(it.begin32()))
          .hex(8, Integer.toUnsignedLong(it.end32()))
          .body();
    }
    TripPoint it = (TripPoint) message;
    return head('W', it)
        .hex(1, it.channel().code())
        .bit(it.rising())
        .hex(4, it.fineCode())
        .hex(4, it.levelSum64())
        .hex(4, it.lightSum16())
        .body();
  }

  private static FieldWriter head(char kind, RigMessage message) {
    return new FieldWriter(kind, message.sequence());
  }
}
