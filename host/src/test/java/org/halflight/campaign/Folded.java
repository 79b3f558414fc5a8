package org.halflight.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.bench.BenchFold;
import org.halflight.bench.BenchText;
import org.halflight.session.FiringResult;

/** The program's own way from the lines of a session file to results, without a file. */
final class Folded {
  private final BenchFold fold = new BenchFold();
  private long mostNews;

  /** Takes a line of a session file; one that is no event is passed over, as in a file. */
  void take(String line) {
    BenchText.parse(line)
        .ifPresent(
            event -> {
              BenchFold.Brought brought = fold.take(event);
              mostNews = Math.max(mostNews, brought.said().size() + brought.news().size());
            });
  }

  /** Takes a whole file, and breaks off at its end. */
  static Folded of(List<String> lines) {
    Folded folded = new Folded();
    lines.subList(1, lines.size()).forEach(folded::take);
    folded.breaksOff();
    return folded;
  }

  void breaksOff() {
    fold.breakOff();
  }

  /** The most that one line brought: what it said and the news of it. */
  long mostNews() {
    return mostNews;
  }

  BenchFold fold() {
    return fold;
  }

  /** The results, in words of our own. */
  List<Seen> seen() {
    List<Seen> seen = new ArrayList<>();
    for (FiringResult each : fold.session().results()) {
      seen.add(seen(each));
    }
    return seen;
  }

  private static Seen seen(FiringResult result) {
    List<TrueEdge> edges = new ArrayList<>();
    result
        .firing()
        .edges()
        .forEach(e -> edges.add(new TrueEdge(e.channel().code(), e.high(), e.ticks())));
    edges.sort(Comparator.comparingLong(TrueEdge::ticks));
    return new Seen(
        result.key().bootCount(),
        edges,
        !result.firing().damage().isEmpty(),
        result.outcome().name(),
        result.effectiveSeconds().orElse(0));
  }
}
