package org.halflight.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.exposure.ReboundSeen;
import org.halflight.session.FiringResult;
import org.halflight.session.ReboundOfRun;
import org.halflight.speeds.MarkedSpeed;

/** What the long light curves of a run showed of a rebound. */
public final class ReboundWords {
  private ReboundWords() {}

  /**
   * One sentence for each speed that was looked at, and one more where they differ; none where
   * nobody looked.
   *
   * @param firings of one run
   */
  public static List<String> ofRun(List<FiringResult> firings) {
    ReboundOfRun run = ReboundOfRun.of(firings);
    List<String> sentences = new ArrayList<>();
    for (MarkedSpeed speed : run.lookedAt()) {
      firings.stream()
          .filter(FiringResult::isGood)
          .filter(f -> f.shown().filter(speed::equals).isPresent())
          .flatMap(f -> f.reboundSeen().stream())
          .filter(ReboundSeen::looked)
          .max(Comparator.comparingDouble(ReboundSeen::afterSeconds))
          .ifPresent(seen -> sentences.add(look(speed, seen)));
    }
    if (!run.isAlike()) {
      sentences.add(Words.say("rebound.look.differs"));
    }
    return sentences;
  }

  private static String look(MarkedSpeed speed, ReboundSeen seen) {
    return seen.afterSeconds() > 0
        ? Words.say(
            "rebound.look.seen",
            Numbers.speed(speed),
            Numbers.time(seen.afterSeconds()),
            Numbers.time(seen.startSeconds()),
            Numbers.percent(seen.peak()))
        : Words.say("rebound.look.none", Numbers.speed(speed));
  }
}
