package org.halflight.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.halflight.rig.RigEvent.Ignored;
import org.halflight.rig.RigEvent.Why;
import org.halflight.rig.RigMessage.Beat;
import org.halflight.rig.RigMessage.EdgeSeen;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Losses;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;

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
  private final LinkCounters counters = new LinkCounters();
  private final Continuity continuity = new Continuity();
  private final CurveAssembler curves = new CurveAssembler();
  private final WaitingLines waiting = new WaitingLines();
  private final WholeTicks whole = new WholeTicks();
  private final EdgeCount edges = new EdgeCount();
  private OptionalLong nanos = OptionalLong.empty();

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
   * Notes that lines were left out of a stored session, of which nothing depends: they came, and
   * none of them is missing.
   *
   * @param last counter of the last of them
   */
  public void leftOut(int last) {
    continuity.leftOut(last);
    damagedLineLast = false;
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
    dropWaiting(events);
    anchored = false;
    noteGap();
    whole.forgetPace();
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
      edges.came(1);
      place(placed -> edge(edge, came, line, placed), line, 1, events);
    } else if (message instanceof Beat beat) {
      beat(beat, events);
    } else if (message instanceof Losses now) {
      edges.onCounters(now).forEach(event -> publish(event, events));
      counters.losses(now);
    } else if (message instanceof RigMessage.AsItCame itself) {
      events.add(itself);
    } else if (message instanceof RigMessage.Echo echo) {
      events.add(
          new RigEvent.Echoed(
              echo.token(),
              whole.continued(echo.receivedTicks()),
              whole.continued(echo.sentTicks())));
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
    boolean runsBack = whole.goesBack(greeting.ticks(), gapSinceWhole);
    whole.board(greeting.board());
    if (startOutOfTurn || otherBoot || runsBack) {
      // Edges that wait came before this start, whose ticks cannot place them.
      dropWaiting(events);
      inDoubt = runsBack && !startOutOfTurn && !otherBoot && step == Continuity.Step.DUE;
      if (inDoubt) {
        contradicted(events);
      }
      edges.isUnsure();
      continuity.startedAnew();
      if (whole.areKnown()) {
        restart(events);
      }
      // The greeting is line 0 of a start; if this is a later one, all before it went missing.
      addMissing(greeting.sequence(), events);
    } else {
      noteMissing(step, events);
    }
    if (greeting.sequence() == 0 && (first || startOutOfTurn)) {
      edges.begin();
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
    if (whole.goesBack(beat.ticks(), gapSinceWhole)) {
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
      whole.beat(ticks, nanos.getAsLong());
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
    } else if (!waiting.add(placed, line, weight)) {
      leaveOut(line, events);
    }
  }

  /** Tells something that has no ticks, in its place among what waits for them. */
  private void publish(RigEvent event, List<RigEvent> events) {
    if (waiting.isEmpty()) {
      events.add(event);
    } else if (!waiting.add(event)) {
      // Noise: what waits is not worth its order any more.
      dropWaiting(events);
      events.add(event);
    }
  }

  private void leaveOut(String line, List<RigEvent> events) {
    // It came, and is missing all the same; of what is no edge this counts one too few, as may be.
    edges.came(-1);
    edges.lineIsMissing();
    events.add(new Ignored(Why.EDGE_WITHOUT_TIME, line));
  }

  private void edge(EdgeSeen seen, OptionalLong came, String line, List<RigEvent> events) {
    edges.edgeSeen();
    OptionalLong ticks = whole.ofEdge(seen.channel(), seen.low32(), placing, came);
    if (ticks.isPresent()) {
      events.add(new RigEvent.EdgeAt(new Edge(seen.channel(), seen.high(), ticks.getAsLong())));
    } else {
      impossible(line, events);
    }
  }

  private void impossible(String line, List<RigEvent> events) {
    counters.bad(ParsedLine.Reason.FIELDS);
    events.add(new Ignored(Why.IMPOSSIBLE, line));
    contradicted(events);
  }

  /** One of the last lines says what cannot be, and nobody knows which. */
  private void contradicted(List<RigEvent> events) {
    events.add(new RigEvent.Contradicted(whole.sureUntil()));
  }

  private RigEvent pulse(RigMessage.PulseMade made) {
    long begin = whole.past(made.begin32());
    // A pulse is far shorter than the range of the low half.
    long end = begin + Integer.toUnsignedLong(made.end32() - made.begin32());
    return new RigEvent.PulseMade(made.index(), made.drive(), begin, end);
  }

  private RigEvent curve(CurveAssembler.Assembled curve) {
    List<SampledLight.Part> parts = new ArrayList<>();
    long from = whole.past(curve.heads().get(0).first32());
    int from32 = curve.heads().get(0).first32();
    for (int i = 0; i < curve.heads().size(); i++) {
      RigMessage.CurvePart head = curve.heads().get(i);
      from += Integer.toUnsignedLong(head.first32() - from32);
      from32 = head.first32();
      parts.add(
          new SampledLight.Part(
              head.part(), from, head.periodTicks(), curve.values().get(i), head.gapBefore()));
    }
    return new RigEvent.CurveSeen(
        new SampledLight(curve.heads().get(0).sensor(), parts, curve.cutOff()));
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
    whole.forget();
    anchored = false;
    edges.begin();
    bootCount = Optional.empty();
  }

  /** Takes whole ticks, and places the edges that waited for them. */
  private long anchor(long wireTicks, List<RigEvent> events) {
    long ticks = whole.continued(wireTicks);
    if (!WholeTicks.isTime(ticks)) {
      restartUnseen(events);
      ticks = wireTicks;
    }
    whole.anchor(ticks);
    anchored = true;
    gapSinceWhole = false;
    missingSinceWhole = 0;
    placing = true;
    waiting.place(events);
    placing = false;
    whole.reached(ticks);
    return ticks;
  }

  private void noteMissing(Continuity.Step step, List<RigEvent> events) {
    int missing = continuity.missing();
    if (!waiting.isEmpty()
        && missing > 0
        && (waiting.missing(missing) || step == Continuity.Step.BACK)) {
      // The next whole ticks may be of another start, or too far from these edges.
      dropWaiting(events);
    }
    if (waiting.isEmpty()) {
      long before = step == Continuity.Step.BACK ? 0 : missingSinceWhole;
      missingSinceWhole = (int) Math.min(Integer.MAX_VALUE, before + missing);
    }
    addMissing(missing, events);
    if (step == Continuity.Step.BACK) {
      // The line may be an old one that comes again, and so may those behind it.
      edges.isUnsure();
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
      edges.lineIsMissing();
      publish(new RigEvent.LinesLost(count), events);
    }
  }

  private void dropWaiting(List<RigEvent> events) {
    curves.breakOff();
    waiting.drop(events).forEach(line -> leaveOut(line, events));
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
