package org.halflight.bench;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigStream;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.signal.Firing;
import org.halflight.verdict.QuickAsFound;
import org.halflight.verdict.SpeedSummary;

/**
 * The one way from bench events to results, for live work, replay and practice alike. The same
 * events always bring the same results. Not safe for use by several threads.
 *
 * <p>Where an act of the person is undone, all that the session was told is told to a new one, but
 * for what was undone: so it comes to what it would have come to without. The lines of the rig are
 * not read again for that.
 */
public final class SessionReducer {
  private final RigStream stream = new RigStream();
  private Session session = new Session(SessionReducer::verdictIsIn);
  private final UserActionBook acts = new UserActionBook();

  /** All that the session was told, what was undone too. */
  private final List<SessionInput> told = new ArrayList<>();

  /** Where in it the acts are, by the number of their marks. */
  private final Map<Long, Integer> places = new HashMap<>();

  /** Places of what was undone. */
  private final BitSet undone = new BitSet();

  private Optional<RigMessage.Greeting> greeting = Optional.empty();
  private boolean heard;
  private int damagedMarks;
  private int unknownMarks;

  /**
   * What an event brought.
   *
   * @param said what the rig said
   * @param news what there is to tell, in order
   */
  public record Brought(List<RigEvent> said, List<SessionEvent> news) {
    public Brought {
      said = List.copyOf(said);
      news = List.copyOf(news);
    }
  }

  /** Takes an event. */
  public Brought onEvent(BenchEvent event) {
    return onEvent(event, Optional.empty());
  }

  /** Takes many events; comes to the same as to take one after the other, in less time. */
  public void onEvents(List<BenchEvent> events) {
    Optional<Set<Long>> undoneInTheEnd = Optional.of(EffectiveEvents.undone(events));
    events.forEach(event -> onEvent(event, undoneInTheEnd));
  }

  /**
   * Takes an event.
   *
   * @param known numbers of the acts that do not count in the end, where that is known beforehand:
   *     these are not told, and nothing has to be told again for them
   */
  private Brought onEvent(BenchEvent event, Optional<Set<Long>> known) {
    List<RigEvent> said = List.of();
    List<SessionEvent> news = new ArrayList<>();
    if (event instanceof BenchEvent.Received received) {
      heard = true;
      said = stream.accept(received.rigLine(), received.hostNanos());
      said.forEach(each -> onRigEvent(each, news));
    } else if (event instanceof BenchEvent.Mark mark) {
      onMark(mark, known, news);
    }
    return new Brought(said, news);
  }

  private void onMark(BenchEvent.Mark mark, Optional<Set<Long>> known, List<SessionEvent> news) {
    if (mark.kind().equals(Marks.BEGINS)) {
      if (mark.values().containsKey(Marks.AT) && Marks.beganAt(mark).isEmpty()) {
        damagedMarks++;
      }
      // Whatever the rig was at, nobody listens any more.
      handle(new SessionInput.RigAtWork(false), news);
      handle(new SessionInput.ClocksForgotten(), news);
      news.addAll(breakOff());
      return;
    }
    if (mark.kind().equals(LeftOutLines.KIND)) {
      LeftOutLines.upTo(mark).ifPresentOrElse(stream::leftOut, () -> damagedMarks++);
      return;
    }
    OptionalLong act = UndoMarks.note(mark, acts);
    if (act.isPresent()) {
      if (known.isEmpty()) {
        turn(act.getAsLong(), mark.kind().equals(UndoMarks.UNDO), news);
      }
      return;
    }
    Optional<SessionInput> input = Marks.input(mark);
    if (input.isEmpty()) {
      unknownMarks += Marks.isKnown(mark.kind()) ? 0 : 1;
      damagedMarks += Marks.isKnown(mark.kind()) ? 1 : 0;
      return;
    }
    if (mark.number() > 0 && input.get() instanceof SessionInput.UserAction) {
      places.put(mark.number(), told.size());
      if (known.filter(numbers -> numbers.contains(mark.number())).isPresent()) {
        undone.set(told.size());
        told.add(input.get());
        return;
      }
    }
    handle(input.get(), news);
  }

  /** An act counts no more, or counts again: the session becomes what it is without, or with it. */
  private void turn(long act, boolean off, List<SessionEvent> news) {
    int place = Objects.requireNonNull(places.get(act));
    undone.set(place, off);
    Session before = session;
    session = new Session(SessionReducer::verdictIsIn);
    for (int i = 0; i < told.size(); i++) {
      if (!undone.get(i)) {
        session.handle(told.get(i));
      }
    }
    addChanges(before, news);
    SessionInput.UserAction it = (SessionInput.UserAction) told.get(place);
    news.add(off ? new SessionEvent.Undone(it) : new SessionEvent.Redone(it));
    news.addAll(session.standing());
  }

  private void addChanges(Session before, List<SessionEvent> news) {
    Map<FiringKey, FiringResult> known = new HashMap<>();
    before.results().forEach(result -> known.put(result.key(), result));
    for (FiringResult now : session.results()) {
      FiringResult was = known.get(now.key());
      if (was == null) {
        news.add(new SessionEvent.Settled(now));
      } else if (!now.equals(was)) {
        news.add(
            now.rejection().isPresent() && was.rejection().isEmpty()
                ? new SessionEvent.Rejected(now)
                : new SessionEvent.Changed(now));
      }
    }
  }

  /** The mark of the last act that counts and can be undone, by its number. */
  public OptionalLong toUndo() {
    return acts.toUndo();
  }

  /** The last mark that undid an act, by its number, as long as no act followed. */
  public OptionalLong toRedo() {
    return acts.toRedo();
  }

  /** The act that {@link #toUndo()} names. */
  public Optional<SessionInput.UserAction> undoes() {
    return act(acts.toUndo());
  }

  /** The act that {@link #toRedo()} would do again. */
  public Optional<SessionInput.UserAction> redoes() {
    OptionalLong undo = acts.toRedo();
    return undo.isPresent() ? act(acts.actOf(undo.getAsLong())) : Optional.empty();
  }

  private Optional<SessionInput.UserAction> act(OptionalLong mark) {
    return mark.isPresent()
        ? Optional.ofNullable(places.get(mark.getAsLong()))
            .map(place -> (SessionInput.UserAction) told.get(place))
        : Optional.empty();
  }

  /**
   * Ends whatever is under way: the program died here and may have begun again, or the file ends.
   * Where the light was off again, the firing settles as it is, with nothing known to be lost;
   * where it was on, nobody saw how it went on, which is damage and no stuck shutter.
   */
  public List<SessionEvent> breakOff() {
    List<SessionEvent> news = new ArrayList<>();
    if (heard) {
      // Edges that waited for their time, and a last line that came damaged, are missing here.
      stream.linkLost().forEach(each -> onRigEvent(each, news));
      if (!session.seesLight()) {
        handle(new SessionInput.Ends(), news);
      }
      handle(new SessionInput.LinkLost(), news);
    }
    return news;
  }

  /** Takes all events of a file, and breaks off there. */
  public static SessionReducer replay(List<BenchEvent> events) {
    SessionReducer fold = new SessionReducer();
    fold.onEvents(events);
    fold.breakOff();
    return fold;
  }

  /** The session that the events made; another one after each event that undoes something. */
  public Session session() {
    return session;
  }

  /** What came over the link. */
  public LinkStatistics linkStatistics() {
    return stream.statistics();
  }

  /** Light curves that came with their beginning or their order lost, and were left out. */
  public long curvesDropped() {
    return stream.curvesDropped();
  }

  /** The last greeting. */
  public Optional<RigMessage.Greeting> greeting() {
    return greeting;
  }

  /** Marks whose values make no sense. */
  public int damagedMarks() {
    return damagedMarks;
  }

  /** Marks of a kind that this version does not know: a later one may have written them. */
  public int unknownMarks() {
    return unknownMarks;
  }

  private static boolean verdictIsIn(RunSetup setup, List<FiringResult> firings) {
    SpeedSummary summary = SpeedSummary.underWay(firings, setup);
    if (setup.isQuick()) {
      return QuickAsFound.isKnown(summary);
    }
    // More firings do not help where the rig or the light has to be looked at.
    return summary.isMeanDecided() || summary.timingBasis().instead().isPresent();
  }

  private void handle(SessionInput input, List<SessionEvent> news) {
    if (input instanceof SessionInput.LinkLost) {
      stream.linkLost().forEach(each -> onRigEvent(each, news));
    }
    told.add(input);
    news.addAll(session.handle(input));
  }

  private void onRigEvent(RigEvent said, List<SessionEvent> news) {
    if (said instanceof RigMessage.Greeting greeted) {
      greeting = Optional.of(greeted);
      handle(
          new SessionInput.RigIs(
              greeted.serial(), greeted.bootCount(), greeted.board(), greeted.firmware()),
          news);
    } else if (said instanceof RigEvent.EdgeAt edge) {
      handle(new SessionInput.EdgeAt(edge.edge()), news);
    } else if (said instanceof RigEvent.CurveSeen curve) {
      handle(new SessionInput.CurveAt(curve.light()), news);
    } else if (said instanceof RigEvent.TimeAt time) {
      handle(
          new SessionInput.BeatAt(time.ticks(), time.levels(), OptionalInt.of(time.lightSum16())),
          news);
    } else if (said instanceof RigMessage.Thresholds read) {
      handle(
          new SessionInput.ThresholdsRead(read.lowSum64() / 64.0, read.highSum64() / 64.0), news);
    } else if (said instanceof RigEvent.LinesLost) {
      handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST), news);
    } else if (said instanceof RigEvent.EdgesCounted counted) {
      handle(new SessionInput.EdgesCounted(counted.allCame()), news);
    } else if (said instanceof RigEvent.Contradicted contradicted) {
      handle(
          new SessionInput.Damaged(
              Firing.Damage.CONTRADICTION,
              OptionalLong.of(contradicted.sinceTicks().orElse(Long.MIN_VALUE / 2))),
          news);
    } else if (said instanceof RigEvent.Ignored ignored
        && ignored.why() == RigEvent.Why.EDGE_WITHOUT_TIME) {
      handle(new SessionInput.Damaged(Firing.Damage.LINES_LOST), news);
    } else if (said instanceof RigEvent.EdgesLost) {
      handle(new SessionInput.Damaged(Firing.Damage.EDGES_LOST), news);
    } else if (said instanceof RigEvent.Restarted) {
      handle(new SessionInput.Damaged(Firing.Damage.RIG_RESTARTED), news);
    }
  }
}
