package org.halflight.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionForm;
import org.halflight.bench.SessionReducer;
import org.halflight.export.FiringTable;
import org.halflight.session.FiringResult;

/** The program's own way from the lines of a session file to results, without a file. */
final class Folded {
  private final SessionReducer fold;
  private final SessionForm form;
  private long mostNews;

  private Folded(SessionReducer fold, SessionForm form) {
    this.fold = fold;
    this.form = form;
  }

  /** A session at work: takes line by line, of a file with this first line. */
  static Folded live(String heading) {
    return new Folded(new SessionReducer(), SessionForm.of(heading).orElseThrow());
  }

  /** A session at work that goes on with a file. */
  static Folded resumed(List<String> lines) {
    Folded folded = live(lines.get(0));
    folded.fold.onEvents(folded.events(lines));
    return folded;
  }

  /** A replay of a whole file. */
  static Folded of(List<String> lines) {
    Folded folded = live(lines.get(0));
    return new Folded(SessionReducer.replay(folded.events(lines)), folded.form);
  }

  /** What a bench at work has come to. */
  static Folded of(SessionReducer fold) {
    return new Folded(fold, SessionForm.newest());
  }

  /** Handles a line of a session file; one that is no event is passed over, as in a file. */
  void handle(String line) {
    form.event(line)
        .ifPresent(
            event -> {
              SessionReducer.Brought brought = fold.onEvent(event);
              mostNews = Math.max(mostNews, brought.said().size() + brought.news().size());
            });
  }

  void breaksOff() {
    fold.breakOff();
  }

  private List<BenchEvent> events(List<String> lines) {
    return lines.subList(1, lines.size()).stream()
        .flatMap(line -> form.event(line).stream())
        .toList();
  }

  /** The most that one line brought: what it said and the news of it. */
  long mostNews() {
    return mostNews;
  }

  /** Whether a run is under way that has not all its firings. */
  boolean isInterrupted() {
    return fold.session().setup().isPresent() && !fold.session().isRunDone();
  }

  SessionReducer fold() {
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

  /** Where two ways to the same results differ, byte for byte; empty where they do not. */
  String difference(Folded other) {
    List<String> own = written();
    List<String> others = other.written();
    for (int i = 0; i < Math.max(own.size(), others.size()); i++) {
      String one = i < own.size() ? own.get(i) : "nothing";
      String two = i < others.size() ? others.get(i) : "nothing";
      if (!one.equals(two)) {
        return one + " | " + two;
      }
    }
    return "";
  }

  /** All results as tables have them, with their raw edges, and what the bench shows. */
  private List<String> written() {
    List<String> written = new ArrayList<>();
    List<FiringResult> results = fold.session().results();
    FiringTable.of(results).rows().forEach(row -> written.add(String.join(",", row)));
    results.forEach(each -> written.add(each.firing().edges().toString()));
    fold.session().readings().forEach(each -> written.add(each.toString()));
    written.add(fold.session().setting() + " of run " + fold.session().run());
    written.add(fold.session().question() + " " + fold.session().light());
    return written;
  }

  private static Seen seen(FiringResult result) {
    List<TrueEdge> edges = new ArrayList<>();
    result
        .firing()
        .edges()
        .forEach(e -> edges.add(new TrueEdge(e.channel().code(), e.high(), e.ticks())));
    edges.sort(Comparator.comparingLong(TrueEdge::ticks));
    return new Seen(
        result.key().rigSerial(),
        result.key().bootCount(),
        edges,
        !result.firing().damage().isEmpty(),
        result.outcome().name(),
        result.effectiveSeconds().orElse(0));
  }
}
