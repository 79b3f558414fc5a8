package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.halflight.rig.RigEvent.Ignored;
import org.halflight.rig.RigEvent.Why;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
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
 * by protocol), since a gap can hide any length of time or a restart. Losses that come while edges
 * wait keep their place between them. Edges that a restart overtakes while they wait are left out
 * with {@link Why#EDGE_WITHOUT_TIME}.
 *
 * <p>Light curves and reference pulses wait in the same way. The lines of a curve become one event;
 * a value that was lost is -1 in it, and a curve whose beginning was lost is left out and counted.
 *
 * <p>A line whose CRC fits may still say what the rig cannot have meant. An edge is left out with
 * {@link Why#IMPOSSIBLE} when it is earlier than the lines before it by more than lines come out of
 * order, earlier than the edge before it on its own channel, later than the beat that follows it,
 * or of a time that had not come yet by the clock of the host, where that is handed in. {@link
 * RigEvent.Contradicted} tells then, and where ticks run back although no line is missing, since
 * when nothing is to be trusted. A greeting with another start number is left out in the same way
 * where no line is missing since the one before it.
 *
 * <p>Where the rig started anew and its greeting did not come, what is missing may be of before the
 * start or of after it. {@link RigEvent.LinesLost} is told on both sides of {@link
 * RigEvent.Restarted} then.
 *
 * <p>Ticks go on beyond the 48 bits of the wire when these wrap (203 days).
 *
 * <p>For one thread.
 */
public final class RigStream {
  private static final long WIRE_TICKS = 1L << 48;

  /** A rig cannot send as many edges between two beats; what exceeds it is noise. */
  private static final int HELD_EDGES_MOST = 4096;

  private static final int COUNTER_STOPS_AT = 0xFFFF;

  /** Ticks of the wire lie at most so far before the whole ticks that place them. */
  private static final long LOW_HALF = 1L << 32;

  /**
   * How far the whole ticks that came last may lag behind those of a line: 67 s, of which a beat
   * needs 262 ms. What is left of the low half reaches 201 s back.
   */
  private static final long AHEAD_MOST_TICKS = 1L << 30;

  /** What waits weighs no more than this: an edge 1, a curve as many as it has values. */
  private static final int HELD_WEIGHT_MOST = 1 << 16;

  /**
   * So many missing lines can hide more time than the low half of ticks tells apart: each may have
   * been a beat.
   */
  private static final int MISSING_MOST = 400;

  /** 19 hours: no beat is so late that no line is missing before it. */
  private static final long LEAP_MOST_TICKS = 1L << 40;

  /** Ticks beyond this are no time of a board, and would leave the range of numbers some day. */
  private static final long TICKS_MOST = 1L << 60;

  /**
   * Something that waits for whole ticks, or for what waits before it.
   *
   * @param line empty for an event that has no ticks of its own
   */
  private record Held(Consumer<List<RigEvent>> placed, Optional<String> line, int weight) {}

  private final LinkCounters counters = new LinkCounters();
  private final Continuity continuity = new Continuity();
  private final CurveAssembler curves = new CurveAssembler();
  private final Deque<Held> held = new ArrayDeque<>();
  private int heldWeight;
  private int missingWhileHeld;
  private final LifePace pace = new LifePace();
  private BoardTraits board = BoardTraits.USUAL;
  private OptionalLong nanos = OptionalLong.empty();
  private final TickWidening widening = new TickWidening(0);
  private Optional<Long> wholeTicks = Optional.empty();

  /** The whole ticks before the last ones. */
  private Optional<Long> wholeTicksBefore = Optional.empty();

  /** The latest ticks of edges and beats. */
  private Optional<Long> greatestTicks = Optional.empty();

  private final Map<Channel, Long> channelTicks = new EnumMap<>(Channel.class);

  /** Whether lines went missing since the last whole ticks. */
  private boolean gapSinceWhole;

  /** How many were told, or how many since a start may hide among them. */
  private int missingSinceWhole;

  /** Whether lines went missing since the last greeting: among them a start may hide. */
  private boolean gapSinceGreeting;

  /** Whether a damaged line came last: a line that follows tells whether one is missing. */
  private boolean damagedLineLast;

  private boolean anchored;

  /** Whether things are placed that came before the last whole ticks. */
  private boolean placing;

  private Optional<Long> bootCount = Optional.empty();
  private Optional<Losses> losses = Optional.empty();
  private boolean edgesSeen;

  /**
   * Edges that came since the rig last told how many it sent; each once, or fewer. Empty where one
   * may be counted twice.
   */
  private OptionalLong edgesCame = OptionalLong.of(0);

  /** Whether lines went missing since the rig last told how many edges it sent. */
  private boolean linesLostSinceCount;

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
   * Takes the next line, of which nobody knows when it came.
   *
   * @return what it says, in order; empty when it says nothing new
   */
  public List<RigEvent> accept(RigLine line) {
    return accept(line, OptionalLong.empty());
  }

  /**
   * Takes the next line.
   *
   * @param hostNanos when it came, by a clock of the host that never runs back
   * @return what it says, in order; empty when it says nothing new
   */
  public List<RigEvent> accept(RigLine line, long hostNanos) {
    return accept(line, OptionalLong.of(hostNanos));
  }

  private List<RigEvent> accept(RigLine came, OptionalLong hostNanos) {
    nanos = hostNanos;
    String line = came.text();
    counters.line(line);
    List<RigEvent> events = new ArrayList<>();
    ParsedLine parsed = came.parsed();
    damagedLineLast = parsed instanceof ParsedLine.Bad;
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
   * @return what became of edges that still waited for their time, and whether the last line may
   *     have been one
   */
  public List<RigEvent> linkLost() {
    List<RigEvent> events = new ArrayList<>();
    if (damagedLineLast) {
      damagedLineLast = false;
      publish(new RigEvent.LinesLost(1), events);
    }
    dropHeld(events);
    anchored = false;
    noteGap();
    pace.forget();
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
      greeting(greeting, line, step, first, events);
      return;
    }
    noteMissing(step, events);
    if (message instanceof EdgeSeen edge) {
      OptionalLong came = nanos;
      countEdges(1);
      place(placed -> edge(edge, came, line, placed), line, 1, events);
    } else if (message instanceof Beat beat) {
      beat(beat, events);
    } else if (message instanceof Losses now) {
      losses(now, events);
    } else if (message instanceof RigMessage.AsItCame itself) {
      events.add(itself);
    } else if (message instanceof RigMessage.Echo echo) {
      events.add(
          new RigEvent.Echoed(
              echo.token(), continued(echo.receivedTicks()), continued(echo.sentTicks())));
    } else if (message instanceof RigMessage.CurvePart head) {
      curves.head(head).ifPresent(curve -> place(curve, line, events));
      curves.endedByHead().ifPresent(curve -> place(curve, line, events));
    } else if (message instanceof RigMessage.CurveValues values) {
      curves.values(values).ifPresent(curve -> place(curve, line, events));
    } else if (message instanceof RigMessage.PulseMade pulse) {
      place(placed -> placed.add(pulse(pulse)), line, 1, events);
    }
  }

  private void greeting(
      Greeting greeting, String line, Continuity.Step step, boolean first, List<RigEvent> events) {
    boolean startOutOfTurn = greeting.sequence() == 0 && step != Continuity.Step.DUE;
    boolean otherBoot = bootCount.filter(known -> known != greeting.bootCount()).isPresent();
    if (otherBoot && greeting.sequence() != 0 && step == Continuity.Step.DUE && !gapSinceGreeting) {
      // No line is missing since the greeting of before, so no start lies between: one of the two
      // start numbers is wrong, and firings keep the one that they have.
      impossible(line, events);
      return;
    }
    boolean inDoubt = false;
    boolean runsBack = goesBack(greeting.ticks());
    board = greeting.board();
    pace.rate(board.rate());
    if (startOutOfTurn || otherBoot || runsBack) {
      // Edges that wait came before this start, whose ticks cannot place them.
      dropHeld(events);
      inDoubt = runsBack && !startOutOfTurn && !otherBoot && step == Continuity.Step.DUE;
      if (inDoubt) {
        contradicted(events);
      }
      edgesCame = OptionalLong.empty();
      continuity.startedAnew();
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
      edgesCame = OptionalLong.of(0);
    }
    bootCount = Optional.of(greeting.bootCount());
    gapSinceGreeting = false;
    anchor(greeting.ticks(), events);
    events.add(greeting);
    if (inDoubt) {
      contradicted(events);
    }
  }

  private void beat(Beat beat, List<RigEvent> events) {
    boolean inDoubt = false;
    if (goesBack(beat.ticks())) {
      boolean startMayHide = gapSinceWhole;
      if (!startMayHide) {
        // No start hides between two lines that follow each other: one of the ticks is wrong.
        contradicted(events);
      }
      restartUnseen(events);
      inDoubt = !startMayHide;
    }
    long ticks = anchor(beat.ticks(), events);
    counters.beat(ticks);
    if (nanos.isPresent()) {
      pace.beat(ticks, nanos.getAsLong());
    }
    events.add(new RigEvent.TimeAt(ticks, beat.levels(), beat.lightSum16()));
    if (inDoubt) {
      // What goes on here began before, whatever its edges say; the next beat tells the time.
      contradicted(events);
    }
    curves.beat().ifPresent(curve -> events.add(curve(curve)));
  }

  private void place(CurveAssembler.Assembled curve, String line, List<RigEvent> events) {
    place(placed -> placed.add(curve(curve)), line, curve.weight(), events);
  }

  /** Tells something that has ticks at once, or when whole ticks place it. */
  private void place(
      Consumer<List<RigEvent>> placed, String line, int weight, List<RigEvent> events) {
    if (anchored) {
      placed.accept(events);
    } else if (held.size() < HELD_EDGES_MOST && heldWeight + weight <= HELD_WEIGHT_MOST) {
      held.addLast(new Held(placed, Optional.of(line), weight));
      heldWeight += weight;
    } else {
      leaveOut(line, events);
    }
  }

  /** Tells something that has no ticks, in its place among what waits for them. */
  private void publish(RigEvent event, List<RigEvent> events) {
    if (held.isEmpty()) {
      events.add(event);
    } else if (held.size() < 2 * HELD_EDGES_MOST) {
      held.addLast(new Held(placed -> placed.add(event), Optional.empty(), 0));
    } else {
      // Noise: what waits is not worth its order any more.
      dropHeld(events);
      events.add(event);
    }
  }

  private void leaveOut(String line, List<RigEvent> events) {
    // It came, and is missing all the same; of what is no edge this counts one too few, as may be.
    countEdges(-1);
    linesLostSinceCount = true;
    events.add(new Ignored(Why.EDGE_WITHOUT_TIME, line));
  }

  private void edge(EdgeSeen seen, OptionalLong came, String line, List<RigEvent> events) {
    edgesSeen = true;
    long ticks = widening.widen(seen.low32());
    if (isImpossible(seen.channel(), ticks, came)) {
      impossible(line, events);
      return;
    }
    channelTicks.put(seen.channel(), ticks);
    greatestTicks = Optional.of(Math.max(ticks, greatestTicks.orElse(ticks)));
    events.add(new RigEvent.EdgeAt(new Edge(seen.channel(), seen.high(), ticks)));
  }

  private boolean isImpossible(Channel channel, long ticks, OptionalLong came) {
    return ticks < 0
        || greatestTicks.filter(latest -> ticks < latest - board.lateTicks()).isPresent()
        || ticks < channelTicks.getOrDefault(channel, ticks) - board.stampTicks()
        || (placing && ticks > wholeTicks.orElse(ticks) + board.lateTicks())
        || (came.isPresent() && pace.isTooEarly(ticks, came.getAsLong()));
  }

  private void impossible(String line, List<RigEvent> events) {
    counters.bad(ParsedLine.Reason.FIELDS);
    events.add(new Ignored(Why.IMPOSSIBLE, line));
    contradicted(events);
  }

  /** One of the last lines says what cannot be, and nobody knows which. */
  private void contradicted(List<RigEvent> events) {
    OptionalLong since =
        wholeTicksBefore.isPresent()
            ? OptionalLong.of(wholeTicksBefore.get() - board.lateTicks())
            : OptionalLong.empty();
    events.add(new RigEvent.Contradicted(since));
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
    if (linesLostSinceCount) {
      publish(new RigEvent.EdgesCounted(allEdgesCame(now)), events);
    }
    linesLostSinceCount = false;
    edgesCame = OptionalLong.of(0);
    losses = Optional.of(now);
    counters.losses(now);
    if (more) {
      publish(new RigEvent.EdgesLost(), events);
    }
  }

  private void countEdges(int more) {
    edgesCame.ifPresent(before -> edgesCame = OptionalLong.of(before + more));
  }

  private boolean allEdgesCame(Losses now) {
    return losses.isPresent()
        && edgesCame.isPresent()
        && Math.floorMod(now.edges() - losses.get().edges(), LOW_HALF) == edgesCame.getAsLong();
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

  /** A start whose greeting did not come: what is missing may be of before it or of after. */
  private void restartUnseen(List<RigEvent> events) {
    continuity.startedAnew();
    restart(events);
    if (gapSinceWhole) {
      // It was told in its place too, but there it touches the start before only.
      events.add(new RigEvent.LinesLost(Math.max(1, missingSinceWhole)));
    }
  }

  private void restart(List<RigEvent> events) {
    curves.breakOff();
    events.add(new RigEvent.Restarted());
    wholeTicks = Optional.empty();
    wholeTicksBefore = Optional.empty();
    greatestTicks = Optional.empty();
    channelTicks.clear();
    pace.forget();
    anchored = false;
    losses = Optional.of(noLosses());
    edgesCame = OptionalLong.of(0);
    bootCount = Optional.empty();
  }

  /**
   * Whether whole ticks lie before those that came last, by more than lines come out of order; or,
   * where no line is missing between, so far behind them that they only seem to by the wrap of the
   * wire.
   */
  private boolean goesBack(long wireTicks) {
    if (wholeTicks.isEmpty()) {
      return false;
    }
    long last = wholeTicks.get();
    long way = wayFrom(last, wireTicks);
    return Math.max(last, greatestTicks.orElse(last)) - (last + way) > board.lateTicks()
        || (!gapSinceWhole && way > LEAP_MOST_TICKS);
  }

  /** Takes whole ticks, and places the edges that waited for them. */
  private long anchor(long wireTicks, List<RigEvent> events) {
    long ticks = continued(wireTicks);
    if (ticks > TICKS_MOST) {
      restartUnseen(events);
      ticks = wireTicks;
    }
    wholeTicksBefore = wholeTicks;
    wholeTicks = Optional.of(ticks);
    widening.anchor(ticks);
    anchored = true;
    gapSinceWhole = false;
    missingSinceWhole = 0;
    placing = true;
    while (!held.isEmpty()) {
      held.removeFirst().placed().accept(events);
    }
    placing = false;
    heldWeight = 0;
    missingWhileHeld = 0;
    greatestTicks = Optional.of(Math.max(ticks, greatestTicks.orElse(ticks)));
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
    int missing = continuity.missing();
    if (!held.isEmpty() && missing > 0) {
      missingWhileHeld += Math.min(missing, MISSING_MOST);
      if (step == Continuity.Step.BACK || missingWhileHeld >= MISSING_MOST) {
        // The next whole ticks may be of another start, or too far from these edges.
        dropHeld(events);
      }
    }
    if (held.isEmpty()) {
      long before = step == Continuity.Step.BACK ? 0 : missingSinceWhole;
      missingSinceWhole = (int) Math.min(Integer.MAX_VALUE, before + missing);
    }
    addMissing(missing, events);
    if (step == Continuity.Step.BACK) {
      // The line may be an old one that comes again, and so may those behind it.
      edgesCame = OptionalLong.empty();
    }
    if (step != Continuity.Step.DUE) {
      anchored = false;
      noteGap();
    }
  }

  private void noteGap() {
    gapSinceWhole = true;
    gapSinceGreeting = true;
  }

  private void addMissing(int count, List<RigEvent> events) {
    if (count > 0) {
      counters.missing(count);
      curves.missing(count);
      linesLostSinceCount = true;
      publish(new RigEvent.LinesLost(count), events);
    }
  }

  private void dropHeld(List<RigEvent> events) {
    curves.breakOff();
    // What waited among the lines does not speak of them: they go missing only now.
    held.stream()
        .filter(each -> each.line().isEmpty())
        .forEach(each -> each.placed().accept(events));
    held.forEach(each -> each.line().ifPresent(line -> leaveOut(line, events)));
    held.clear();
    heldWeight = 0;
    missingWhileHeld = 0;
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
