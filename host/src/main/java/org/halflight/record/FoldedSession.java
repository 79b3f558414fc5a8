package org.halflight.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.BenchFold;
import org.halflight.bench.Marks;
import org.halflight.rig.LinkStatistics;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionNews;
import org.halflight.signal.Edge;

/**
 * A session worked out from its events, with which firing belongs to which run.
 *
 * <p>Where the events end in the middle of a firing, that one is settled as it stands. If its light
 * was off again, its figures hold but for bounce that may have followed; if not, nobody saw how it
 * went on, which is damage and no stuck shutter.
 */
final class FoldedSession {
  /** A run as the events tell it. */
  static final class FoldedRun {
    private final RunSetup asked;
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

  private static final int BEFORE_RUNS = 0;

  private final BenchFold fold = new BenchFold();
  private final List<FoldedRun> runs = new ArrayList<>();
  private final Map<FiringKey, Integer> ordinals = new HashMap<>();
  private final List<Greeting> greetings = new ArrayList<>();
  private final List<FiringKey> cutOff = new ArrayList<>();
  private Optional<BenchEvent.Mark> begins = Optional.empty();

  private FoldedSession() {}

  static FoldedSession of(List<BenchEvent> events) {
    FoldedSession asEnded = of(events, new SessionInput.Ends());
    return asEnded.endsInLight() ? of(events, new SessionInput.LinkLost()) : asEnded;
  }

  private static FoldedSession of(List<BenchEvent> events, SessionInput end) {
    FoldedSession folded = new FoldedSession();
    events.forEach(folded::take);
    int settled = folded.fold.session().results().size();
    folded.take(Marks.of(0, end));
    folded.fold.session().results().stream()
        .skip(settled)
        .map(FiringResult::key)
        .forEach(folded.cutOff::add);
    return folded;
  }

  List<FiringResult> firings() {
    return fold.session().results();
  }

  /** The runs, in order. */
  List<FoldedRun> runs() {
    return runs;
  }

  /** What the rigs said of themselves. */
  List<Greeting> greetings() {
    return greetings;
  }

  /** Counts the runs from 1; 0 for a firing before the first. */
  int ordinalOf(FiringResult firing) {
    return ordinals.getOrDefault(firing.key(), BEFORE_RUNS);
  }

  /** Whether the events ended before the quiet time of a firing had passed. */
  boolean isCutOff(FiringResult firing) {
    return cutOff.contains(firing.key());
  }

  private void take(BenchEvent event) {
    if (SessionStart.beganAt(event).isPresent()) {
      begins = Optional.of((BenchEvent.Mark) event);
    }
    Optional<Greeting> before = fold.greeting();
    for (SessionNews news : fold.take(event)) {
      if (news instanceof SessionNews.Settled settled) {
        ordinals.put(settled.result().key(), runs.size());
      }
    }
    fold.greeting().filter(now -> !Optional.of(now).equals(before)).ifPresent(greetings::add);
    if (!runs.isEmpty()) {
      runs.get(runs.size() - 1).linkAfter = fold.linkStatistics();
    }
    if (event instanceof BenchEvent.Mark mark
        && Marks.input(mark).orElse(null) instanceof SessionInput.RunBegins run) {
      runs.add(new FoldedRun(run.setup(), at(event), fold.linkStatistics()));
    }
  }

  private Optional<Instant> at(BenchEvent event) {
    return begins.flatMap(
        mark ->
            SessionStart.beganAt(mark)
                .map(began -> began.plusNanos(event.hostNanos() - mark.hostNanos())));
  }

  private boolean endsInLight() {
    return firings().stream()
        .filter(this::isCutOff)
        .flatMap(
            firing ->
                firing.firing().edges().stream()
                    .collect(java.util.stream.Collectors.toMap(Edge::channel, e -> e, (a, b) -> b))
                    .values()
                    .stream())
        .anyMatch(last -> last.high() && last.channel().isLight());
  }
}
