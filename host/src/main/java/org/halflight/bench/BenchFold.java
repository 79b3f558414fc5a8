package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigStream;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionNews;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.time.TickRate;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.Judging;
import org.halflight.verdict.Placement;
import org.halflight.verdict.SpeedSummary;

/**
 * The one way from bench events to results, for live work, replay and practice alike. The same
 * events always bring the same results. Not safe for use by several threads.
 */
public final class BenchFold {
  private final RigStream stream = new RigStream();
  private final Session session = new Session(BenchFold::verdictIsIn);
  private Optional<RigMessage.Greeting> greeting = Optional.empty();
  private boolean heard;
  private int damagedMarks;

  /**
   * What an event brought.
   *
   * @param said what the rig said
   * @param news what there is to tell, in order
   */
  public record Brought(List<RigEvent> said, List<SessionNews> news) {
    public Brought {
      said = List.copyOf(said);
      news = List.copyOf(news);
    }
  }

  /** Takes an event. */
  public Brought take(BenchEvent event) {
    List<RigEvent> said = List.of();
    List<SessionNews> news = new ArrayList<>();
    if (event instanceof BenchEvent.Received received) {
      heard = true;
      said = stream.accept(received.line(), received.hostNanos());
      said.forEach(each -> hear(each, news));
    } else if (event instanceof BenchEvent.Mark mark) {
      if (mark.kind().equals(Marks.BEGINS)) {
        // Whatever the rig was at, nobody listens any more.
        tell(new SessionInput.RigAtWork(false), news);
        tell(new SessionInput.ClocksForgotten(), news);
        news.addAll(breakOff());
        return new Brought(said, news);
      }
      Optional<SessionInput> input = Marks.input(mark);
      if (input.isEmpty()) {
        damagedMarks++;
      }
      input.ifPresent(known -> tell(known, news));
    }
    return new Brought(said, news);
  }

  /**
   * Ends whatever is under way: the program died here and may have begun again, or the file ends.
   * Where the light was off again, the firing settles as it is, with nothing known to be lost;
   * where it was on, nobody saw how it went on, which is damage and no stuck shutter.
   */
  public List<SessionNews> breakOff() {
    List<SessionNews> news = new ArrayList<>();
    if (heard) {
      // Edges that waited for their time, and a last line that came damaged, are missing here.
      stream.linkLost().forEach(each -> hear(each, news));
      if (!session.seesLight()) {
        tell(new SessionInput.Ends(), news);
      }
      tell(new SessionInput.LinkLost(), news);
    }
    return news;
  }

  /** Takes all events of a file, and breaks off there. */
  public static BenchFold replay(List<BenchEvent> events) {
    BenchFold fold = new BenchFold();
    events.forEach(fold::take);
    fold.breakOff();
    return fold;
  }

  /** The session that the events made. */
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

  /** Marks that said nothing that this version understands. */
  public int damagedMarks() {
    return damagedMarks;
  }

  /** By the firings and the wide allowances for any rig, so that a replay finds the same. */
  private static boolean verdictIsIn(RunSetup setup, List<FiringResult> firings) {
    MarkedSpeed speed = firings.get(0).shown().orElseThrow();
    Placement placement =
        SpeedSummary.of(
                firings,
                setup.aim().tolerances().of(speed, setup.markings()),
                Judging.of(setup, RigKnowledge.UNCALIBRATED))
            .placement();
    return placement == Placement.WITHIN
        || placement == Placement.SLOW
        || placement == Placement.FAST;
  }

  private void tell(SessionInput input, List<SessionNews> news) {
    if (input instanceof SessionInput.LinkLost) {
      stream.linkLost().forEach(each -> hear(each, news));
    }
    news.addAll(session.take(input));
  }

  private void hear(RigEvent said, List<SessionNews> news) {
    if (said instanceof RigEvent.Greeted greeted) {
      greeting = Optional.of(greeted.greeting());
      news.addAll(
          session.take(
              new SessionInput.RigIs(
                  greeted.greeting().serial(),
                  greeted.greeting().bootCount(),
                  new TickRate(greeted.greeting().ticksPerSecond()),
                  (greeted.greeting().channels() & 1 << Channel.CENTRE_HIGH.code()) == 0,
                  greeted.greeting().firmware())));
    } else if (said instanceof RigEvent.EdgeAt edge) {
      news.addAll(session.take(new SessionInput.EdgeAt(edge.edge())));
    } else if (said instanceof RigEvent.CurveSeen curve) {
      news.addAll(session.take(new SessionInput.CurveAt(curve.light())));
    } else if (said instanceof RigEvent.TimeAt time) {
      news.addAll(
          session.take(
              new SessionInput.BeatAt(
                  time.ticks(), time.levels(), OptionalInt.of(time.lightSum16()))));
    } else if (said instanceof RigEvent.LinesLost) {
      news.addAll(session.take(new SessionInput.Damaged(Firing.Damage.LINES_LOST)));
    } else if (said instanceof RigEvent.Contradicted contradicted) {
      news.addAll(
          session.take(
              new SessionInput.Damaged(
                  Firing.Damage.CONTRADICTION,
                  OptionalLong.of(contradicted.sinceTicks().orElse(Long.MIN_VALUE / 2)))));
    } else if (said instanceof RigEvent.Ignored ignored
        && ignored.why() == RigEvent.Why.EDGE_WITHOUT_TIME) {
      news.addAll(session.take(new SessionInput.Damaged(Firing.Damage.LINES_LOST)));
    } else if (said instanceof RigEvent.EdgesLost) {
      news.addAll(session.take(new SessionInput.Damaged(Firing.Damage.EDGES_LOST)));
    } else if (said instanceof RigEvent.Restarted) {
      news.addAll(session.take(new SessionInput.Damaged(Firing.Damage.RIG_RESTARTED)));
    }
  }
}
