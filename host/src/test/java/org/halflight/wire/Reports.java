package org.halflight.wire;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionReducer;
import org.halflight.session.FiringResult;
import org.halflight.wire.ModelBoard.Sent;
import org.halflight.wire.TrueFiring.TrueEdge;

/** What the program makes of lines, held against what really happened. */
final class Reports {
  private final List<FiringResult> results;
  private final Map<List<TrueEdge>, TrueFiring> truth = new HashMap<>();

  private Reports(List<FiringResult> results, List<TrueFiring> firings) {
    this.results = results;
    for (TrueFiring firing : firings) {
      truth.put(firing.edges(), firing);
      // Light whose press, seconds before, was lost with all its lines is what it is said to be.
      firing.lightAlone().ifPresent(light -> truth.put(light.edges(), light));
    }
  }

  static Reports of(List<Sent> lines, List<TrueFiring> firings) {
    SessionReducer fold = new SessionReducer();
    for (Sent sent : lines) {
      fold.onEvent(new BenchEvent.Received(sent.nanos(), sent.line()));
    }
    fold.breakOff();
    return new Reports(fold.session().results(), firings);
  }

  int undamaged() {
    return (int) results.stream().filter(r -> r.firing().damage().isEmpty()).count();
  }

  int all() {
    return results.size();
  }

  /**
   * The law: a firing that is reported without damage is a true one, edge by edge, with its true
   * outcome and time. So no true firing that lost a line is reported without damage.
   *
   * @return what is false, if anything
   */
  Optional<String> falsehood() {
    for (FiringResult result : results) {
      if (!result.firing().damage().isEmpty()) {
        continue;
      }
      List<TrueEdge> edges = new ArrayList<>();
      result
          .firing()
          .edges()
          .forEach(e -> edges.add(new TrueEdge(e.channel().code(), e.high(), e.ticks())));
      TrueFiring real = truth.get(edges);
      if (real == null) {
        return Optional.of(result.outcome() + " of no true firing: " + edges);
      }
      boolean same =
          result.outcome().name().equals(real.outcome())
              && (real.seconds().isEmpty()
                  || Math.abs(
                          result.effectiveSeconds().orElseThrow() - real.seconds().getAsDouble())
                      < 1e-9);
      if (!same) {
        return Optional.of(result.outcome() + " instead of " + real + ": " + result.exposure());
      }
    }
    return Optional.empty();
  }
}
