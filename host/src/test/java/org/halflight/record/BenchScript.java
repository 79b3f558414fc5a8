package org.halflight.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.Marks;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.session.CameraCustoms;
import org.halflight.session.FiringKey;
import org.halflight.session.Phase;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/**
 * Writes the events of an invented session: a rig, its lines, and what a person does. Its clocks
 * stand still but for what it is told.
 */
final class BenchScript {
  static final Dial DIAL =
      new Dial(
          Dial.CUSTOM,
          List.of(MarkedSpeed.parse("1/30"), MarkedSpeed.parse("1/60"), MarkedSpeed.parse("1/125")),
          Reference.EXACT);

  private static final long TICKS_PER_SECOND = 16_000_000;

  /** Opening and closing take a millisecond each; the area grows evenly. */
  private static final long RAMP_TICKS = TICKS_PER_SECOND / 1000;

  /** From one reading of a light curve to the next. */
  private static final int CURVE_TICKS = 256;

  private final String rigSerial;
  private final Consumer<BenchEvent> sink;
  private long bootCount;
  private int sequence;
  private int curves;
  private long ticks = 4800;
  private long lastFirstTicks;

  BenchScript(String rigSerial, long bootCount, Consumer<BenchEvent> sink) {
    this.rigSerial = rigSerial;
    this.bootCount = bootCount;
    this.sink = sink;
  }

  /** The events that a script writes. */
  static List<BenchEvent> events(String rigSerial, long bootCount, Consumer<BenchScript> script) {
    List<BenchEvent> events = new ArrayList<>();
    script.accept(new BenchScript(rigSerial, bootCount, events::add));
    return events;
  }

  BenchScript begins(String at) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("version", "0.1.0");
    values.put("at", at);
    values.put("session", rigSerial + "-" + bootCount);
    sink.accept(new BenchEvent.Mark(nanos(), Marks.BEGINS, values));
    return this;
  }

  BenchScript greets() {
    sequence = 0;
    line(
        new RigMessage.Greeting(
            next(),
            1,
            TICKS_PER_SECOND,
            "full",
            0x7F,
            rigSerial,
            bootCount,
            "power",
            "1.0.0",
            ticks));
    return this;
  }

  BenchScript startsAnew() {
    bootCount++;
    ticks = 4800;
    return greets();
  }

  /** Light and thresholds stand such that the levels are the Gauss levels. */
  BenchScript lightIsSet() {
    return handle(
        new SessionInput.LightSet(
            new LightLevels(
                20, 820, 20 + 800 * LevelPair.GAUSS.low(), 20 + 800 * LevelPair.GAUSS.high())));
  }

  BenchScript run(String camera, Phase phase, int firingsPerSpeed, String... speeds) {
    List<MarkedSpeed> order = new ArrayList<>();
    for (String speed : speeds) {
      order.add(MarkedSpeed.parse(speed));
    }
    return handle(
        new SessionInput.RunBegins(
            new RunSetup(camera, phase, Dial.CUSTOM, order, Reference.EXACT, firingsPerSpeed)));
  }

  /** A run of speeds and checks under conditions. */
  BenchScript run(String camera, Phase phase, List<UntimedTest> checks, String... speeds) {
    return handle(
        new SessionInput.RunBegins(
            new RunSetup(
                    camera,
                    phase,
                    Dial.CUSTOM,
                    Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
                    Reference.LITERAL,
                    2,
                    checks.toArray(UntimedTest[]::new))
                .withCustoms(new CameraCustoms(true, false))
                .withConditions(
                    new RunConditions(
                        OptionalDouble.of(7_776_000),
                        Map.of(
                            RunOption.CELLS.name(),
                            "on",
                            RunOption.STOP.name(),
                            "f/4,5; offen = ja")))));
  }

  /** The person says that the last firing was fired at another speed. */
  BenchScript movesLastTo(String speed) {
    return handle(
        new SessionInput.FiringsMoved(
            List.of(new FiringKey(rigSerial, bootCount, lastFirstTicks)),
            MarkedSpeed.parse(speed)));
  }

  BenchScript handle(SessionInput input) {
    sink.accept(Marks.of(nanos(), input));
    return this;
  }

  /** A whole firing and its quiet time. */
  BenchScript fires(double effectiveMillis) {
    return opensAndCloses(effectiveMillis).quiet();
  }

  /** The edges of a firing without its quiet time. */
  BenchScript opensAndCloses(double effectiveMillis) {
    long end = opensFor(effectiveMillis);
    edge(Channel.CENTRE_HIGH, false, end - highEarlierTicks());
    edge(Channel.CENTRE_LOW, false, end);
    return this;
  }

  /** The same with the last two edges in the other order on the wire. */
  BenchScript opensAndClosesOutOfOrder(double effectiveMillis) {
    long end = opensFor(effectiveMillis);
    edge(Channel.CENTRE_LOW, false, end);
    edge(Channel.CENTRE_HIGH, false, end - highEarlierTicks());
    return this;
  }

  /**
   * The light curve of the last firing, as the rig sends it behind the edges: its single readings
   * in lines of 32, ramps as {@link #fires} makes them.
   *
   * @param effectiveMillis as it was fired; short enough for one window
   */
  BenchScript curve(double effectiveMillis) {
    long start = lastFirstTicks - Math.round(LevelPair.GAUSS.low() * RAMP_TICKS);
    long effective = Math.round(effectiveMillis * TICKS_PER_SECOND / 1000);
    long first = start - 40 * CURVE_TICKS;
    int count = (int) ((effective + RAMP_TICKS) / CURVE_TICKS) + 80;
    int number = curves++ & 0xFF;
    line(
        new RigMessage.CurvePart(
            next(),
            Channel.CENTRE_LOW,
            number,
            SampledLight.Kind.OPENING,
            (int) first,
            CURVE_TICKS,
            count,
            true,
            false,
            false));
    for (int from = 0; from < count; from += 32) {
      StringBuilder digits = new StringBuilder();
      for (int i = from; i < Math.min(count, from + 32); i++) {
        double since = first + (long) i * CURVE_TICKS - start;
        double open = Math.min(since, effective + RAMP_TICKS - since) / RAMP_TICKS;
        double counts = 20 + 800 * Math.max(0, Math.min(1, open));
        digits.append(String.format(Locale.ROOT, "%02X", (int) (counts / 4)));
      }
      line(new RigMessage.CurveValues(next(), number, from, digits.toString()));
    }
    return this;
  }

  private static long highEarlierTicks() {
    return Math.round((1 - LevelPair.GAUSS.low()) * RAMP_TICKS)
        - Math.round((1 - LevelPair.GAUSS.high()) * RAMP_TICKS);
  }

  /** The edges of an opening; gives the ticks at which the low level is passed at the end. */
  /** The edges of another opening of the same firing, 30 ms behind the last one. */
  BenchScript opensAndClosesAgain(double effectiveMillis) {
    long first = lastFirstTicks;
    long end = opensFor(effectiveMillis, ticks + 30 * TICKS_PER_SECOND / 1000);
    edge(Channel.CENTRE_HIGH, false, end - highEarlierTicks());
    edge(Channel.CENTRE_LOW, false, end);
    lastFirstTicks = first;
    return this;
  }

  private long opensFor(double effectiveMillis) {
    passes(TICKS_PER_SECOND / 2);
    return opensFor(effectiveMillis, ticks);
  }

  private long opensFor(double effectiveMillis, long start) {
    long effectiveTicks = Math.round(effectiveMillis * TICKS_PER_SECOND / 1000);
    lastFirstTicks = start + Math.round(LevelPair.GAUSS.low() * RAMP_TICKS);
    // The area rises from 0 to 1 in the ramp and falls after the effective time, so the light is
    // above a level q from q ramps after the start to (1 - q) ramps after the effective time.
    edge(Channel.CENTRE_LOW, true, start + Math.round(LevelPair.GAUSS.low() * RAMP_TICKS));
    edge(Channel.CENTRE_HIGH, true, start + Math.round(LevelPair.GAUSS.high() * RAMP_TICKS));
    return start + effectiveTicks + Math.round((1 - LevelPair.GAUSS.low()) * RAMP_TICKS);
  }

  /** Opens and stays open. */
  BenchScript opens() {
    passes(TICKS_PER_SECOND / 2);
    edge(Channel.CENTRE_LOW, true, ticks);
    edge(Channel.CENTRE_HIGH, true, ticks + RAMP_TICKS / 2);
    return this;
  }

  /** Goes dark after so long. */
  BenchScript closesAfter(double millis) {
    long at = ticks + Math.round(millis * TICKS_PER_SECOND / 1000);
    while (ticks < at) {
      passes(Math.min(TICKS_PER_SECOND / 5, at - ticks), Channel.CENTRE_LOW, Channel.CENTRE_HIGH);
    }
    edge(Channel.CENTRE_HIGH, false, at + 10);
    edge(Channel.CENTRE_LOW, false, at + RAMP_TICKS / 2);
    return this;
  }

  /** The foil at the wind knob touches its wire, or leaves it. */
  BenchScript foil(boolean touches) {
    edge(Channel.KNOB, touches, ticks);
    return this;
  }

  BenchScript pressesInVain() {
    passes(TICKS_PER_SECOND / 2);
    edge(Channel.RELEASE, true, ticks);
    edge(Channel.RELEASE, false, ticks + TICKS_PER_SECOND / 20);
    return quiet();
  }

  BenchScript waits(int seconds) {
    for (int i = 0; i < 5 * seconds; i++) {
      passes(TICKS_PER_SECOND / 5);
    }
    return this;
  }

  /** A quiet time after the last edge a beat tells of light that no edge told of. */
  BenchScript contradicts() {
    passes(TICKS_PER_SECOND / 4, Channel.CENTRE_LOW);
    return quiet();
  }

  /**
   * Only the low level tells of a firing; the session ends, and what the high level saw from the
   * same tick on comes after the next beginning.
   */
  BenchScript comesInTwo(double millis, String beginsAgainAt) {
    passes(TICKS_PER_SECOND / 2);
    long opened = ticks;
    long closed = opened + Math.round(millis * TICKS_PER_SECOND / 1000);
    edge(Channel.CENTRE_LOW, true, opened);
    edge(Channel.CENTRE_LOW, false, closed);
    handle(new SessionInput.Ends());
    begins(beginsAgainAt);
    edge(Channel.CENTRE_HIGH, true, opened);
    edge(Channel.CENTRE_HIGH, false, closed - RAMP_TICKS / 2);
    return quiet();
  }

  BenchScript quiet() {
    passes(TICKS_PER_SECOND / 5);
    passes(TICKS_PER_SECOND / 5);
    return this;
  }

  private void passes(long span, Channel... high) {
    ticks += span;
    int levels = 0;
    for (Channel channel : high) {
      levels |= 1 << channel.code();
    }
    line(new RigMessage.Beat(next(), ticks, levels, 0x1234));
  }

  private void edge(Channel channel, boolean high, long at) {
    ticks = Math.max(ticks, at);
    line(new RigMessage.EdgeSeen(next(), channel, high, (int) at));
  }

  private void line(RigMessage message) {
    sink.accept(new BenchEvent.Received(nanos(), LineCodec.format(message)));
  }

  private long nanos() {
    return Math.round(ticks * 62.5);
  }

  private int next() {
    int now = sequence;
    sequence = (sequence + 1) & 0xFFFF;
    return now;
  }
}
