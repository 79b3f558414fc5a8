package org.halflight.campaign;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds results against what was fired. */
final class WireLaw {
  static final String LOST = "firings lost whose lines all came, with the beat behind them";
  static final String FALSE = "results without a mark that are not what was fired";
  static final String NEEDLESS = "firings without a figure though nothing near them was touched";

  private static final double RELATIVE = 1e-6;

  /** Ticks of the wire wrap after 203 days; which wrap it is says nothing about a firing. */
  private static final long WIRE_TICKS = (1L << 48) - 1;

  private WireLaw() {}

  /**
   * @param touched firings of which a line, or a beat behind one, did not come as it was sent
   * @param near firings near which a line did not
   */
  static void judge(
      List<TrueFiring> firings,
      List<Seen> seen,
      BitSet touched,
      BitSet near,
      String replay,
      Tally tally) {
    Set<TrueEdge> kept = edges(seen);
    Map<Long, List<TrueFiring>> byFirst = byFirst(firings);
    Set<TrueFiring> right = new HashSet<>();
    for (Seen each : seen) {
      tally.add("results", 1);
      if (each.marked()) {
        tally.add("results with a mark", 1);
        continue;
      }
      TrueFiring truth = truthOf(byFirst, each);
      String wrong = wrong(truth, each);
      if (wrong.isEmpty()) {
        right.add(truth);
      } else {
        tally.breaks(FALSE, replay, wrong);
      }
    }
    for (int i = 0; i < firings.size(); i++) {
      TrueFiring firing = firings.get(i);
      tally.add("firings", 1);
      if (!touched.get(i) && !kept.containsAll(onTheWire(firing.edges()))) {
        tally.breaks(LOST, replay, "firing " + i + " at " + firing.firstTicks());
      }
      // A press in vain waits for its light, and for so long whatever is lost may have been that.
      boolean waits = firing.kind() == TrueFiring.Kind.DID_NOT_OPEN;
      if (!waits && !near.get(i) && !right.contains(firing)) {
        tally.breaks(NEEDLESS, replay, "firing " + i + " at " + firing.firstTicks());
      }
    }
  }

  /** All edges of some results, with the ticks of the wire. */
  static Set<TrueEdge> edges(List<Seen> seen) {
    Set<TrueEdge> edges = new HashSet<>();
    seen.forEach(each -> edges.addAll(onTheWire(each.edges())));
    return edges;
  }

  /** Firings by the ticks of their first edge; two starts of a board may each have one there. */
  static Map<Long, List<TrueFiring>> byFirst(List<TrueFiring> firings) {
    return firings.stream()
        .collect(Collectors.groupingBy(firing -> firing.firstTicks() & WIRE_TICKS));
  }

  /** What was fired where a result begins, at its start if any was; null where nothing was. */
  static TrueFiring truthOf(Map<Long, List<TrueFiring>> byFirst, Seen seen) {
    List<TrueFiring> there = byFirst.getOrDefault(seen.firstTicks() & WIRE_TICKS, List.of());
    return there.stream()
        .filter(firing -> firing.bootCount() == seen.bootCount())
        .findFirst()
        .orElse(there.isEmpty() ? null : there.get(0));
  }

  /** Whether a result says something false; one without figures says nothing. */
  static boolean isFalse(TrueFiring truth, Seen seen) {
    return !seen.marked() && !seen.outcome().equals("UNUSABLE") && !wrong(truth, seen).isEmpty();
  }

  /** What is wrong about a result; empty where nothing is. */
  static String wrong(TrueFiring truth, Seen seen) {
    if (truth == null) {
      return "nothing was fired that began at "
          + seen.firstTicks()
          + ", but "
          + seen.outcome()
          + " of "
          + seen.edges().size()
          + " edges";
    }
    // Of a rig that never greeted nobody knows the start, and the result says so.
    if (!seen.rig().isEmpty() && truth.bootCount() != seen.bootCount()) {
      return "start " + seen.bootCount() + " for " + truth.bootCount() + " at " + seen.firstTicks();
    }
    if (!truth.kind().name().equals(seen.outcome())) {
      return seen.outcome() + " for " + truth.kind() + " at " + seen.firstTicks();
    }
    if (Math.abs(seen.effectiveSeconds() - truth.effectiveSeconds())
        > RELATIVE * truth.effectiveSeconds()) {
      return seen.effectiveSeconds()
          + " s for "
          + truth.effectiveSeconds()
          + " s at "
          + seen.firstTicks();
    }
    return onTheWire(truth.edges()).equals(onTheWire(seen.edges()))
        ? ""
        : seen.edges().size()
            + " edges for "
            + truth.edges().size()
            + " of "
            + truth.kind()
            + " at "
            + seen.firstTicks();
  }

  static List<TrueEdge> onTheWire(List<TrueEdge> edges) {
    return edges.stream()
        .map(edge -> new TrueEdge(edge.channel(), edge.high(), edge.ticks() & WIRE_TICKS))
        .toList();
  }
}
