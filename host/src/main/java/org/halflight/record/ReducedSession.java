package org.halflight.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.EffectiveEvents;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionReducer;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.PlungerAt;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;

/**
 * A session worked out from its events, with its runs.
 *
 * <p>Where the events end in the middle of a firing, or the program had died there and began again,
 * that firing is settled as {@link SessionReducer#breakOff} says. If its light was off again, its
 * figures hold but for bounce that may have followed.
 */
final class ReducedSession {
  /** A run as the events tell it. */
  static final class FoldedRun {
    private RunSetup asked;
    private final Optional<Instant> beganAt;
    private final LinkStatistics linkBefore;
    private LinkStatistics linkAfter;

    private FoldedRun(RunSetup asked, Optional<Instant> beganAt, LinkStatistics linkBefore) {
      this.asked = asked;
      this.beganAt = beganAt;
      this.linkBefore = linkBefore;
      this.linkAfter = linkBefore;
    }

    RunSetup asked() {
      return asked;
    }

    Optional<Instant> beganAt() {
      return beganAt;
    }

    LinkStatistics link() {
      return LinkRows.between(linkBefore, linkAfter);
    }
  }

  private final SessionReducer fold = new SessionReducer();
  private final List<FoldedRun> runs = new ArrayList<>();
  private final List<Greeting> greetings = new ArrayList<>();
  private final Set<FiringKey> cutOff = new HashSet<>();
  private Optional<BenchEvent.Mark> begins = Optional.empty();

  private ReducedSession() {}

  static ReducedSession of(List<BenchEvent> events) {
    ReducedSession folded = new ReducedSession();
    EffectiveEvents.of(events).forEach(folded::onEvent);
    folded.noteCutOff(folded.fold.breakOff());
    return folded;
  }

  List<FiringResult> firings() {
    return fold.session().results();
  }

  /** The readings of the light with the shutter at rest. */
  List<LightReading> readings() {
    return fold.session().readings();
  }

  /** The presses of the linkage test. */
  List<LinkagePress> presses() {
    return fold.session().presses();
  }

  /** The readings of a screw plunger. */
  List<PlungerAt> plungers() {
    return fold.session().plungers();
  }

  /** The runs, in order. */
  List<FoldedRun> runs() {
    return runs;
  }

  /** What the rigs said of themselves. */
  List<Greeting> greetings() {
    return greetings;
  }

  /** Whether the events broke off before the quiet time of a firing had passed. */
  boolean isCutOff(FiringResult firing) {
    return cutOff.contains(firing.key());
  }

  private void onEvent(BenchEvent event) {
    if (SessionStart.beganAt(event).isPresent()) {
      begins = Optional.of((BenchEvent.Mark) event);
    }
    Optional<Greeting> greetingBefore = fold.greeting();
    LinkStatistics linkBefore = fold.linkStatistics();
    SessionReducer.Brought brought = fold.onEvent(event);
    if (event instanceof BenchEvent.Mark mark && mark.kind().equals(Marks.BEGINS)) {
      noteCutOff(brought.news());
    }
    fold.greeting()
        .filter(now -> !Optional.of(now).equals(greetingBefore))
        .ifPresent(greetings::add);
    while (fold.session().run() < runs.size()) {
      // A stage in which nothing was fired was none.
      runs.remove(runs.size() - 1);
    }
    if (!runs.isEmpty() && fold.session().run() == runs.size()) {
      runs.get(runs.size() - 1).asked = fold.session().setup().orElseThrow();
    } else if (fold.session().run() > runs.size()) {
      runs.add(new FoldedRun(fold.session().setup().orElseThrow(), at(event), linkBefore));
    }
    if (!runs.isEmpty()) {
      runs.get(runs.size() - 1).linkAfter = fold.linkStatistics();
    }
  }

  private void noteCutOff(List<SessionEvent> news) {
    for (SessionEvent each : news) {
      if (each instanceof SessionEvent.Settled settled) {
        cutOff.add(settled.result().key());
      }
    }
  }

  private Optional<Instant> at(BenchEvent event) {
    return begins.flatMap(
        mark ->
            SessionStart.beganAt(mark)
                .map(began -> began.plusNanos(event.hostNanos() - mark.hostNanos())));
  }
}
