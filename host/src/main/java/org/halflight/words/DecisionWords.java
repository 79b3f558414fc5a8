package org.halflight.words;

import org.halflight.verdict.Decision;
import org.halflight.verdict.FiringsWanted;

/** What is said about a decision while the firings still come. */
public final class DecisionWords {
  private DecisionWords() {}

  /** How many firings the decision takes at the scatter so far, and what to do. */
  public static String wanted(FiringsWanted wanted) {
    if (wanted.inAll().isEmpty()) {
      return Words.say("news.wanted.never", Decision.MOST);
    }
    int inAll = wanted.inAll().getAsInt();
    if (wanted.planned().isEmpty()) {
      return Words.say("news.wanted.open", inAll);
    }
    int planned = wanted.planned().getAsInt();
    return inAll > planned
        ? Words.say("news.wanted.more", inAll, planned)
        : planned == wanted.soFar()
            ? Words.say("news.wanted.decided", inAll)
            : Words.say("news.wanted.planned", inAll, planned);
  }
}
