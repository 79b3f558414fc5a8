package org.halflight.verdict;

import org.halflight.session.Outcome;
import org.halflight.speeds.MarkedSpeed;

/**
 * Releases at one speed that came to something else than a time. Such outcomes head every result:
 * no mean says anything about them.
 *
 * @param speed the marked speed
 * @param outcome what they came to
 * @param count how many, 1 or more
 * @param tries of how many releases
 */
public record ShutterTrouble(MarkedSpeed speed, Outcome outcome, int count, int tries) {
  public ShutterTrouble {
    if (count < 1 || count > tries) {
      throw new IllegalArgumentException(count + " of " + tries + " releases");
    }
  }
}
