package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.Pattern;
import org.halflight.verdict.Pattern.Kind;

/**
 * The pattern of a run, in sentences: what it looks like, with figures, and where to look first.
 */
public final class PatternWords {
  private PatternWords() {}

  /**
   * @param dial the speeds of the run, slow to fast
   */
  public static List<String> of(Pattern pattern, List<MarkedSpeed> dial) {
    List<String> sentences = new ArrayList<>();
    sentences.add(first(pattern, dial));
    pattern.signs().forEach(sign -> sentences.add(sign(sign)));
    sentences.addAll(advice(pattern));
    return sentences;
  }

  /** Where to look first; empty where there is nothing to say. */
  public static List<String> advice(Pattern pattern) {
    String advice = "pattern.first." + Sentences.key(pattern.kind());
    return Words.has(advice) ? List.of(Words.say(advice)) : List.of();
  }

  private static String first(Pattern pattern, List<MarkedSpeed> dial) {
    String key = "pattern." + Sentences.key(pattern.kind());
    if (pattern.speeds().isEmpty()) {
      return Words.say(key);
    }
    String speeds = SpeedNames.of(pattern.speeds(), dial);
    if (pattern.leastStops().isEmpty()) {
      return Words.say(
          pattern.kind() == Kind.SLOW_SPEED_TRAIN
              ? key + ".hangs"
              : pattern.kind() == Kind.ONE_ALONE ? key + ".noTime" : key,
          speeds);
    }
    boolean hangs = pattern.signs().stream().anyMatch(Pattern.Hangs.class::isInstance);
    if (hangs && pattern.kind() == Kind.SLOW_SPEED_TRAIN) {
      key += ".both";
    }
    double least = pattern.leastStops().getAsDouble();
    double most = pattern.mostStops().orElseThrow();
    return Words.say(
        key,
        speeds,
        Numbers.stopsRange(
            Math.min(Math.abs(least), Math.abs(most)), Math.max(Math.abs(least), Math.abs(most))),
        Numbers.stopsInWords(least));
  }

  private static String sign(Pattern.Sign sign) {
    if (sign instanceof Pattern.Scatters scatters) {
      String own = Numbers.plainStops(scatters.stops());
      return scatters.othersStops().isPresent()
          ? Words.say(
              "pattern.sign.scatters",
              own,
              Numbers.plainStops(scatters.othersStops().getAsDouble()))
          : Words.say("pattern.sign.scattersAlone", own);
    }
    if (sign instanceof Pattern.Creeps creeps) {
      return Words.say("pattern.sign.creeps", Numbers.plainStops(creeps.stopsAFiring()));
    }
    if (sign instanceof Pattern.Hangs hangs) {
      return Words.say(
          hangs.count() == 1 ? "pattern.sign.hangsOnce" : "pattern.sign.hangs",
          hangs.count(),
          hangs.tries());
    }
    Pattern.LagsAfterRest lags = (Pattern.LagsAfterRest) sign;
    return Words.say("pattern.sign.lags", lags.speed(), Numbers.plainStops(lags.stops()));
  }
}
