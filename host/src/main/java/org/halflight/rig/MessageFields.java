package org.halflight.rig;

import java.util.List;
import java.util.Locale;
import org.halflight.rig.RigCommand.SweepThreshold;
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
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;

/**
 * The lines from rig to host: for each kind its letter and its fields, in the order of
 * docs/protocol.md.
 */
final class MessageFields {
  /** Sum of 16 ten-bit readings at full scale. */
  private static final int SUM_16_MOST = 16 * BoardTraits.FULL_SCALE_COUNTS;

  /** Sum of 64 ten-bit readings at full scale. */
  private static final int SUM_64_MOST = 64 * BoardTraits.FULL_SCALE_COUNTS;

  private static final int SERIAL_CHARACTERS_MOST = 12;
  private static final int VALUE_DIGITS_MOST = 64;

  /** The parts of a light curve in the order of their numbers on the wire. */
  private static final List<SampledLight.Kind> PARTS =
      List.of(
          SampledLight.Kind.OPENING,
          SampledLight.Kind.PLATEAU,
          SampledLight.Kind.CLOSING,
          SampledLight.Kind.TAIL);

  private static final List<Result> RESULTS = List.of(Result.values());

  /** A window has 62500 values a second. */
  private static final long WINDOW_PERIOD_TICKS = 256;

  private static final int LAST = 1;
  private static final int GAP_BEFORE = 2;
  private static final int CUT_OFF = 4;

  /** Two bits above them hold the code of the sensor. */
  private static final int SENSOR_SHIFT = 4;

  private static final int SENSOR = 3 << SENSOR_SHIFT;

  static final LineForms<RigMessage> FORMS =
      new LineForms<RigMessage>()
          .with('H', Greeting.class, MessageFields::greeting)
          .with(
              'E',
              EdgeSeen.class,
              f ->
                  new EdgeSeen(
                      f.sequence(),
                      f.channel(EdgeSeen::channel),
                      f.bit(EdgeSeen::high),
                      f.low32(EdgeSeen::low32)))
          .with(
              'B',
              Beat.class,
              f ->
                  new Beat(
                      f.sequence(),
                      f.ticks(Beat::ticks),
                      f.hex(2, 0xFF, Beat::levels),
                      f.hex(4, SUM_16_MOST, Beat::lightSum16)))
          .with(
              'L',
              Losses.class,
              f ->
                  new Losses(
                      f.sequence(),
                      f.hex(8, Losses::edges),
                      f.hex(4, 0xFFFF, Losses::snapshotsLost),
                      f.hex(4, 0xFFFF, Losses::capturesLost),
                      f.hex(4, 0xFFFF, Losses::floods),
                      f.hex(4, 0xFFFF, Losses::badLines),
                      f.hex(4, 0xFFFF, Losses::longLines),
                      f.hex(4, 0xFFFF, Losses::bytesLost)))
          .with(
              'A',
              Answer.class,
              f ->
                  new Answer(
                      f.sequence(),
                      f.hex(4, 0xFFFF, Answer::commandSequence),
                      f.coded(2, Answer::result, RESULTS, Result::code)))
          .with(
              'Q',
              Echo.class,
              f ->
                  new Echo(
                      f.sequence(),
                      f.hex(4, 0xFFFF, Echo::token),
                      f.ticks(Echo::receivedTicks),
                      f.ticks(Echo::sentTicks)))
          .with(
              'V',
              Thresholds.class,
              f ->
                  new Thresholds(
                      f.sequence(),
                      f.hex(2, 0xFF, Thresholds::lowCode),
                      f.hex(2, 0xFF, Thresholds::highCode),
                      f.hex(4, SUM_64_MOST, Thresholds::lowSum64),
                      f.hex(4, SUM_64_MOST, Thresholds::highSum64)))
          .with('M', LightBlock.class, MessageFields::lightBlock)
          .with('C', CurvePart.class, MessageFields::curvePart)
          .with('D', CurveValues.class, MessageFields::curveValues)
          .with('R', PulseMade.class, MessageFields::pulseMade)
          .with('W', TripPoint.class, MessageFields::tripPoint);

  private MessageFields() {}

  private static Greeting greeting(Fields<Greeting> f) {
    Greeting greeting =
        new Greeting(
            f.sequence(),
            f.hex(2, 0xFF, Greeting::protocol),
            f.hex(8, Greeting::ticksPerSecond),
            // Kind, channels and cause are taken as they come, so that a newer rig can be named.
            f.word(LineCodec.LINE_CHARACTERS_MOST, Greeting::kind),
            f.hex(2, 0xFF, Greeting::channels),
            f.word(SERIAL_CHARACTERS_MOST, Greeting::serial),
            f.hex(8, Greeting::bootCount),
            f.word(LineCodec.LINE_CHARACTERS_MOST, Greeting::resetCause),
            f.word(LineCodec.LINE_CHARACTERS_MOST, Greeting::firmware),
            f.ticks(Greeting::ticks));
    // Another rate would make every time false, or endless.
    f.require(BoardTraits.hasClock(greeting.ticksPerSecond()));
    return greeting;
  }

  private static LightBlock lightBlock(Fields<LightBlock> f) {
    LightBlock block =
        new LightBlock(
            f.sequence(),
            f.channel(LightBlock::channel),
            f.hex(4, 0xFFFF, LightBlock::index),
            f.hex(4, SUM_16_MOST, LightBlock::sum16),
            f.hex(3, BoardTraits.FULL_SCALE_COUNTS, LightBlock::least),
            f.hex(3, BoardTraits.FULL_SCALE_COUNTS, LightBlock::most));
    f.require(LightSensors.has(block.channel()) && block.least() <= block.most());
    return block;
  }

  private static CurvePart curvePart(Fields<CurvePart> f) {
    int curve = f.hex(2, 0xFF, CurvePart::curve);
    SampledLight.Kind kind = f.coded(1, CurvePart::part, PARTS, PARTS::indexOf);
    int first32 = f.low32(CurvePart::first32);
    long periodTicks = f.hex(8, CurvePart::periodTicks);
    // Another time between values would make every figure of the curve false.
    f.require(
        kind.isOfMeans()
            ? periodTicks >= WINDOW_PERIOD_TICKS && Long.bitCount(periodTicks) == 1
            : periodTicks == WINDOW_PERIOD_TICKS);
    int count = f.hex(4, 0xFFFF, CurvePart::count);
    int flags =
        f.hex(
            2,
            SENSOR | LAST | GAP_BEFORE | CUT_OFF,
            it ->
                (it.sensor().code() << SENSOR_SHIFT)
                    | (it.last() ? LAST : 0)
                    | (it.gapBefore() ? GAP_BEFORE : 0)
                    | (it.cutOff() ? CUT_OFF : 0));
    Channel sensor = Channel.ofCode((flags & SENSOR) >> SENSOR_SHIFT).orElseThrow();
    f.require((flags & ~(SENSOR | LAST | GAP_BEFORE | CUT_OFF)) == 0 && LightSensors.has(sensor));
    return new CurvePart(
        f.sequence(),
        sensor,
        curve,
        kind,
        first32,
        periodTicks,
        count,
        (flags & LAST) != 0,
        (flags & GAP_BEFORE) != 0,
        (flags & CUT_OFF) != 0);
  }

  private static CurveValues curveValues(Fields<CurveValues> f) {
    int curve = f.hex(2, 0xFF, CurveValues::curve);
    int index = f.hex(4, 0xFFFF, CurveValues::index);
    String digits = f.word(VALUE_DIGITS_MOST, CurveValues::digits).toUpperCase(Locale.ROOT);
    f.require(digits.length() % 2 == 0 && LineCodec.areHex(digits));
    return new CurveValues(f.sequence(), curve, index, digits);
  }

  private static PulseMade pulseMade(Fields<PulseMade> f) {
    PulseMade pulse =
        new PulseMade(
            f.sequence(),
            f.hex(4, 0xFFFF, PulseMade::index),
            f.drive(PulseMade::drive),
            f.low32(PulseMade::begin32),
            f.low32(PulseMade::end32));
    f.require(pulse.drive().isPulsed());
    return pulse;
  }

  private static TripPoint tripPoint(Fields<TripPoint> f) {
    TripPoint trip =
        new TripPoint(
            f.sequence(),
            f.channel(TripPoint::channel),
            f.bit(TripPoint::rising),
            f.hex(4, SweepThreshold.CODE_MOST, TripPoint::fineCode),
            f.hex(4, SUM_64_MOST, TripPoint::levelSum64),
            f.hex(4, SUM_16_MOST, TripPoint::lightSum16));
    f.require(trip.channel() == Channel.CENTRE_LOW || trip.channel() == Channel.CENTRE_HIGH);
    f.require(trip.fineCode() == 0 || trip.fineCode() >= SweepThreshold.CODE_LEAST);
    return trip;
  }
}
