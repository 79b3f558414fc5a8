package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.halflight.rig.RigEvent.Ignored;
import org.halflight.rig.RigEvent.Why;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickWidening;

/**
 * Turns the lines of one rig, as they came, into {@link RigEvent}s: checks them, follows their
 * counter, and widens their ticks to 64 bits.
 *
 * <p>The same lines always give the same events, so a stored session can be replayed. It reads no
 * clock and does no input or output.
 *
 * <p>Edges carry only the low half of their ticks. They are widened by the last beat or greeting;
 * before the first one, and after lines went missing, edges wait for the next one (262 ms at most
 * by protocol), since a gap can hide any length of time or a restart. Edges that a restart
 * overtakes while they wait are left out with {@link Why#EDGE_WITHOUT_TIME}.
 *
 * <p>Light curves and reference pulses wait in the same way. The lines of a curve become one event;
 * a value that was lost is -1 in it, and a curve whose beginning was lost is left out and counted.
 *
 * <p>Ticks go on beyond the 48 bits of the wire when these wrap (203 days).
 *
 * <p>For one thread.
 */
public final class RigStream {
  private static final long WIRE_TICKS = 1L << 48;

  /** A rig cannot send as many edges between two beats; what exceeds it is noise. */
  private static final int HELD_EDGES_MOST = 4096;

  /** 20 ms at 16 MHz: how far out of order lines may come. */
  private static final long DISORDER_TICKS = 320_000;

  private static final int COUNTER_STOPS_AT = 0xFFFF;

  /** Ticks of the wire lie at most so far before the whole ticks that place them. */
  private static final long LOW_HALF = 1L << 32;

  /**
   * How far the whole ticks that came last may lag behind those of a line: 67 s, of which a beat
   * needs 262 ms. What is left of the low half reaches 201 s back.
   */
  private static final long AHEAD_MOST_TICKS = 1L << 30;

  /** Something whose ticks wait for whole ones. */
  private record Held(Supplier<RigEvent> placed, String line) {}

  private final LinkCounters counters = new LinkCounters();
  private final Continuity continuity = new Continuity();
  private final CurveAssembler curves = new CurveAssembler();
  private final Deque<Held> held = new ArrayDeque<>();
  private final TickWidening widening = new TickWidening(0);
  private Optional<Long> wholeTicks = Optional.empty();
  private boolean anchored;
  private Optional<Long> bootCount = Optional.empty();
  private Optional<Losses> losses = Optional.empty();
  private boolean edgesSeen;

  /** What came over the link so far. */
  public LinkStatistics statistics() {
    return counters.snapshot();
  }

  /**
   * Light curves that were left out because their beginning or their order was lost on the way, or
   * the rig started anew meanwhile.
   */
  public long curvesDropped() {
    return curves.dropped();
  }

  /**
   * Takes the next line.
   *
   * @param line without line end, damaged or not
   * @return what it says, in order; empty when it says nothing new
   */
  public List<RigEvent> accept(String line) {
    counters.line(line);
    List<RigEvent> events = new ArrayList<>();
    ParsedLine parsed = LineCodec.parse(line);
    if (parsed instanceof ParsedLine.Bad bad) {
      counters.bad(bad.reason());
      events.add(new Ignored(why(bad.reason()), line));
    } else if (parsed instanceof ParsedLine.Command) {
      counters.unknown();
      events.add(new Ignored(Why.COMMAND, line));
    } else if (parsed instanceof ParsedLine.UnknownKind unknown) {
      unknown(unknown, line, events);
    } else if (parsed instanceof ParsedLine.Message found) {
      message(found, line, events);
    }
    return events;
  }

  /**
   * Notes that the link was lost: whatever comes next, time has passed and edges may have gone by.
   *
   * @return what became of edges that still waited for their time
   */
  public List<RigEvent> linkLost() {
    List<RigEvent> events = new ArrayList<>();
    dropHeld(events);
    anchored = false;
    return events;
  }

  private void unknown(ParsedLine.UnknownKind unknown, String line, List<RigEvent> events) {
    counters.unknown();
    if (Character.isUpperCase(unknown.kind())) {
      Continuity.Step step = continuity.step(unknown.sequence(), unknown);
      if (step == Continuity.Step.REPEATED) {
        counters.repeated();
      } else {
        noteMissing(step, events);
      }
    }
    events.add(new Ignored(Why.UNKNOWN_KIND, line));
  }

  private void message(ParsedLine.Message found, String line, List<RigEvent> events) {
    RigMessage message = found.message();
    boolean first = !continuity.hasBegun();
    Continuity.Step step = continuity.step(message.sequence(), found);
    if (step == Continuity.Step.REPEATED) {
      counters.repeated();
      events.add(new Ignored(Why.REPEATED, line));
      return;
    }
    if (message instanceof Greeting greeting) {
      greeting(greeting, step, first, events);
      return;
    }
    noteMissing(step, events);
    if (message instanceof EdgeSeen edge) {
      place(() -> edge(edge), line, events);
    } else if (message instanceof Beat beat) {
      beat(beat, events);
    } else if (message instanceof Losses now) {
      losses(now, events);
    } else if (message instanceof RigMessage.Answer answer) {
      events.add(new RigEvent.Answered(answer.commandSequence(), answer.result()));
    } else if (message instanceof RigMessage.Echo echo) {
      events.add(
          new RigEvent.Echoed(
              echo.token(), continued(echo.receivedTicks()), continued(echo.sentTicks())));
    } else if (message instanceof RigMessage.Thresholds readBack) {
      events.add(new RigEvent.Thresholds(readBack));
    } else if (message instanceof RigMessage.LightBlock block) {
      events.add(new RigEvent.Light(block));
    } else if (message instanceof RigMessage.CurvePart head) {
      curves.head(head).ifPresent(curve -> place(() -> curve(curve), line, events));
      curves.endedByHead().ifPresent(curve -> place(() -> curve(curve), line, events));
    } else if (message instanceof RigMessage.CurveValues values) {
      curves.values(values).ifPresent(curve -> place(() -> curve(curve), line, events));
    } else if (message instanceof RigMessage.PulseMade pulse) {
      place(() -> pulse(pulse), line, events);
    } else if (message instanceof RigMessage.TripPoint trip) {
      events.add(
          new RigEvent.Tripped(
              trip.channel(),
              trip.rising(),
              trip.fineCode(),
              trip.levelSum64(),
              trip.lightSum16()));
    }
  }

  private void greeting(
      Greeting greeting, Continuity.Step step, boolean first, List<RigEvent> events) {
    boolean startOutOfTurn = greeting.sequence() == 0 && step != Continuity.Step.DUE;
    boolean otherBoot = bootCount.filter(known -> known != greeting.bootCount()).isPresent();
    if (startOutOfTurn || otherBoot || goesBack(greeting.ticks())) {
      // Edges that wait came before this start, whose ticks cannot place them.
      dropHeld(events);
      if (wholeTicks.isPresent()) {
        restart(events);
      }
      // The greeting is line 0 of a start; if this is a later one, all before it went missing.
      addMissing(greeting.sequence(), events);
    } else {
      noteMissing(step, events);
    }
    if (greeting.sequence() == 0 && (first || startOutOfTurn)) {
      losses = Optional.of(noLosses());
    }
    bootCount = Optional.of(greeting.bootCount());
    anchor(greeting.ticks(), events);
    events.add(new RigEvent.Greeted(greeting));
  }

  private void beat(Beat beat, List<RigEvent> events) {
    if (goesBack(beat.ticks())) {
      restart(events);
    }
    long ticks = anchor(beat.ticks(), events);
    counters.beat(ticks);
    events.add(new RigEvent.TimeAt(ticks, beat.levels(), beat.lightSum16()));
    curves.beat().ifPresent(curve -> events.add(curve(curve)));
  }

  /** Tells something that has ticks at once, or when whole ticks place it. */
  private void place(Supplier<RigEvent> placed, String line, List<RigEvent> events) {
    if (anchored) {
      events.add(placed.get());
    } else if (held.size() < HELD_EDGES_MOST) {
      held.addLast(new Held(placed, line));
    } else {
      events.add(new Ignored(Why.EDGE_WITHOUT_TIME, line));
    }
  }

  private RigEvent edge(EdgeSeen seen) {
    edgesSeen = true;
    return new RigEvent.EdgeAt(new Edge(seen.channel(), seen.high(), widening.widen(seen.low32())));
  }

  private RigEvent pulse(RigMessage.PulseMade made) {
    long begin = past(made.begin32());
    // A pulse is far shorter than the range of the low half.
    long end = begin + Integer.toUnsignedLong(made.end32() - made.begin32());
    return new RigEvent.PulseMade(made.index(), made.drive(), begin, end);
  }

  private RigEvent curve(CurveAssembler.Assembled curve) {
    List<SampledLight.Part> parts = new ArrayList<>();
    long from = past(curve.heads().get(0).first32());
    int from32 = curve.heads().get(0).first32();
    for (int i = 0; i < curve.heads().size(); i++) {
      RigMessage.CurvePart head = curve.heads().get(i);
      from += Integer.toUnsignedLong(head.first32() - from32);
      from32 = head.first32();
      parts.add(
          new SampledLight.Part(
              head.part(), from, head.periodTicks(), curve.values().get(i), head.gapBefore()));
    }
    return new RigEvent.CurveSeen(new SampledLight(parts, curve.cutOff()));
  }

  /** Ticks that lie in the past, as those of a curve do, which may have taken minutes. */
  private long past(int low32) {
    long ticks = widening.widen(low32);
    return ticks > wholeTicks.orElse(ticks) + AHEAD_MOST_TICKS ? ticks - LOW_HALF : ticks;
  }

  private void losses(Losses now, List<RigEvent> events) {
    // Without counters from before, old losses cannot be told from new ones. They concern nobody
    // unless edges were seen already.
    boolean more =
        losses.map(before -> lostMore(before, now)).orElse(edgesSeen && lostMore(noLosses(), now));
    losses = Optional.of(now);
    counters.losses(now);
    if (more) {
      events.add(new RigEvent.EdgesLost(now));
    }
  }

  private static boolean lostMore(Losses before, Losses now) {
    // A counter that has stopped may hide any number of further losses.
    return now.snapshotsLost() != before.snapshotsLost()
        || now.capturesLost() != before.capturesLost()
        || now.floods() != before.floods()
        || now.snapshotsLost() == COUNTER_STOPS_AT
        || now.capturesLost() == COUNTER_STOPS_AT;
  }

  private static Losses noLosses() {
    return new Losses(0, 0, 0, 0, 0, 0, 0, 0);
  }

  private void restart(List<RigEvent> events) {
    curves.breakOff();
    events.add(new RigEvent.Restarted());
    wholeTicks = Optional.empty();
    anchored = false;
    losses = Optional.of(noLosses());
    bootCount = Optional.empty();
  }

  /** Whether whole ticks lie before those that came last, by more than lines come out of order. */
  private boolean goesBack(long wireTicks) {
    return wholeTicks.filter(last -> wayFrom(last, wireTicks) < -DISORDER_TICKS).isPresent();
  }

  /** Takes whole ticks, and places the edges that waited for them. */
  private long anchor(long wireTicks, List<RigEvent> events) {
    long ticks = continued(wireTicks);
    wholeTicks = Optional.of(ticks);
    widening.anchor(ticks);
    anchored = true;
    while (!held.isEmpty()) {
      events.add(held.removeFirst().placed().get());
    }
    return ticks;
  }

  /** Ticks of the wire, continued beyond its 48 bits. */
  private long continued(long wireTicks) {
    return wholeTicks.map(last -> last + wayFrom(last, wireTicks)).orElse(wireTicks);
  }

  /**
   * The shorter way from whole ticks to ticks of the wire, over the wrap of the wire if need be.
   */
  private static long wayFrom(long ticks, long wireTicks) {
    long ahead = Math.floorMod(wireTicks - ticks, WIRE_TICKS);
    return ahead < WIRE_TICKS / 2 ? ahead : ahead - WIRE_TICKS;
  }

  private void noteMissing(Continuity.Step step, List<RigEvent> events) {
    addMissing(continuity.missing(), events);
    if (step != Continuity.Step.DUE) {
      anchored = false;
    }
  }

  private void addMissing(int count, List<RigEvent> events) {
    if (count > 0) {
      counters.missing(count);
      curves.missing(count);
      events.add(new RigEvent.LinesLost(count));
    }
  }

  private void dropHeld(List<RigEvent> events) {
    curves.breakOff();
    while (!held.isEmpty()) {
      events.add(new Ignored(Why.EDGE_WITHOUT_TIME, held.removeFirst().line()));
    }
  }

  private static Why why(ParsedLine.Reason reason) {
    return switch (reason) {
      case TOO_LONG -> Why.TOO_LONG;
      case FORM -> Why.FORM;
      case CRC -> Why.CRC;
      case FIELDS -> Why.FIELDS;
    };
  }
}
