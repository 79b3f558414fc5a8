package org.halflight.record;

import java.util.Iterator;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;

/**
 * What a firing that comes a second time adds to what is kept of it. Edges are only added; what is
 * known of more is not lost to a file that knows less.
 */
final class FiringMerge {
  private FiringMerge() {}

  /** The same edges, once found damaged, stay so: what is told later may only add to that. */
  static FiringResult asDamagedAs(Firing before, FiringResult told) {
    FiringResult result = told;
    if (told.firing().edges().equals(before.edges())) {
      for (Firing.Damage damage : before.damage()) {
        result = result.firing().damage().contains(damage) ? result : result.damagedBy(damage);
      }
    }
    return result;
  }

  /**
   * Whether a firing tells more than what is kept of it. Of one that was cut off: more edges, that
   * none came, or more damage. Of a press of the release: light that came much later. Of any other:
   * that it is damaged after all.
   */
  static boolean isMore(Firing now, boolean cutOff, boolean mayChange, FiringRows.Numbered known) {
    Firing before = known.firing().result().firing();
    if (known.firing().cutOff()) {
      return holds(now, before)
          && (now.edges().size() > before.edges().size()
              || !cutOff
              || (mayChange && isMoreDamaged(now, before)));
    }
    return (known.settledOutcome() == Outcome.DID_NOT_OPEN && begins(now, before))
        || isFoundDamaged(now, cutOff, before);
  }

  /**
   * Whether edges that had settled turned out to be damaged; late light may have been added to a
   * press, or the rest of the firing behind a break of the session, also between its edges.
   */
  private static boolean isFoundDamaged(Firing now, boolean cutOff, Firing before) {
    if (!now.damage().containsAll(before.damage())) {
      return false;
    }
    if (now.edges().size() > before.edges().size()) {
      return (!before.damage().isEmpty() && begins(now, before))
          || (now.damage().contains(Firing.Damage.LINK_LOST) && holds(now, before));
    }
    // Where the session breaks off, damage only means that it ended there.
    return !cutOff && now.edges().equals(before.edges()) && isMoreDamaged(now, before);
  }

  private static boolean isMoreDamaged(Firing now, Firing before) {
    return now.damage().size() > before.damage().size()
        && now.damage().containsAll(before.damage());
  }

  /** Whether a firing begins with all edges of another and goes on. */
  private static boolean begins(Firing firing, Firing other) {
    int n = other.edges().size();
    return firing.edges().size() > n && firing.edges().subList(0, n).equals(other.edges());
  }

  /**
   * Whether all edges of another firing are in it, in their order. Those that are not may stand
   * between: edges of different channels may come a little out of order, so that a file may end
   * before an earlier edge.
   */
  static boolean holds(Firing firing, Firing other) {
    Iterator<Edge> edges = firing.edges().iterator();
    for (Edge wanted : other.edges()) {
      boolean found = false;
      while (!found && edges.hasNext()) {
        found = edges.next().equals(wanted);
      }
      if (!found) {
        return false;
      }
    }
    return true;
  }

  /** The curve that is known stays; one that comes later is added, with what it has to say. */
  static FiringResult curved(FiringResult said, FiringResult now, KeptFiring known) {
    if (known.result().curve().isPresent()) {
      FiringCurve before = known.result().curve().get();
      return said.curve().filter(before::isRawlyThat).isPresent()
          ? withFullLightOf(before, said)
          : said.withCurve(before);
    }
    return now.curve().isPresent() && said.curve().isEmpty()
        ? said.withCurve(now.curve().get())
        : said;
  }

  /**
   * Full light that was once measured after a firing is not forgotten by a file that knows less.
   */
  private static FiringResult withFullLightOf(FiringCurve before, FiringResult said) {
    FiringCurve now = said.curve().orElseThrow();
    return now.fullLightAfter().isEmpty() && before.fullLightAfter().isPresent()
        ? said.withCurve(now.withFullLightAfter(before.fullLightAfter()))
        : said;
  }

  /** Of a file that knows less: what was said stays, and once not counted stays not counted. */
  static FiringResult ofLess(FiringResult now, KeptFiring known) {
    if (!known.cutOff() && now.firing().edges().equals(known.result().firing().edges())) {
      return asDamagedAs(now.firing(), known.result());
    }
    boolean wasRejected = known.result().rejection().isPresent();
    return now.rejection().isEmpty() && wasRejected ? now.rejectedAs(known.result()) : now;
  }
}
