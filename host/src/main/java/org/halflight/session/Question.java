package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import org.halflight.speeds.MarkedSpeed;

/**
 * A question about the dial that the person has not answered yet. The shown speed stands until they
 * do: no speed is ever inferred from a time alone.
 *
 * @param kind what raised it
 * @param shown the speed that was shown
 * @param other the speed that the firings fit
 * @param firings what it is about, in order of firing; those that follow and fit as well join
 */
public record Question(Kind kind, MarkedSpeed shown, MarkedSpeed other, List<FiringKey> firings) {
  /** What raises a question. */
  public enum Kind {
    /** Three in a row fit a neighbour on the dial. */
    NEIGHBOUR,
    /** The first after moving on fits the speed before. */
    DIAL_NOT_TURNED
  }

  public Question {
    firings = List.copyOf(firings);
  }

  /** The answer that moves all its firings to the other speed. */
  public SessionInput move() {
    return new SessionInput.FiringsMoved(firings, other);
  }

  /** The answer that lets them stay. */
  public SessionInput keep() {
    return new SessionInput.AcceptedAsShown();
  }

  Question joinedBy(FiringKey next) {
    List<FiringKey> all = new ArrayList<>(firings);
    all.add(next);
    return new Question(kind, shown, other, all);
  }
}
