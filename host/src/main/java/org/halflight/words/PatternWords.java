package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.Pattern;
import org.halflight.verdict.Pattern.Kind;
import org.halflight.verdict.Pattern.Range;

/** What stands out in a run, in sentences with figures. They name no cause. */
public final class PatternWords {
  private PatternWords() {}

  /**
   * All that stands out.
   *
   * @param dial the speeds of the run, slow to fast
   */
  public static List<String> of(Pattern pattern, List<MarkedSpeed> dial) {
    List<String> sentences = new ArrayList<>();
    pattern.signs().stream()
        .filter(Pattern.WithoutTime.class::isInstance)
        .forEach(sign -> sentences.add(sign(sign, dial)));
    sentences.add(means(pattern, dial));
    sentences.addAll(otherSigns(pattern, dial));
    return sentences;
  }

  /**
   * The same for a page that has sentences of its own about releases without a time; empty where
   * nothing else stands out.
   */
  public static List<String> besideOutcomes(Pattern pattern, List<MarkedSpeed> dial) {
    List<String> sentences = new ArrayList<>();
    if (!pattern.speeds().isEmpty()) {
      sentences.add(means(pattern, dial));
    }
    sentences.addAll(otherSigns(pattern, dial));
    return sentences;
  }

  /** The first thing that stands out, in a few words; empty where nothing does. */
  public static Optional<String> inShort(Pattern pattern, List<MarkedSpeed> dial) {
    Optional<String> means =
        pattern.speeds().isEmpty()
            ? Optional.empty()
            : Optional.of(
                Words.say(
                    "pattern.short." + Words.key(pattern.kind()),
                    SpeedNames.of(pattern.speeds(), dial)));
    return pattern.signs().stream()
        .filter(Pattern.WithoutTime.class::isInstance)
        .map(sign -> inShort(sign, dial))
        .findFirst()
        .or(() -> means)
        .or(() -> pattern.signs().stream().map(sign -> inShort(sign, dial)).findFirst());
  }

  private static String inShort(Pattern.Sign sign, List<MarkedSpeed> dial) {
    if (sign instanceof Pattern.WithoutTime without) {
      return Words.say(
          "pattern.short.withoutTime",
          SpeedNames.of(without.speeds(), dial),
          Sentences.outcome(without.outcome()));
    }
    if (sign instanceof Pattern.Scatters scatters) {
      return Words.say("pattern.short.scatters", SpeedNames.of(scatters.speeds(), dial));
    }
    if (sign instanceof Pattern.Creeps creeps) {
      return Words.say("pattern.short.creeps." + direction(creeps.stopsAFiring()));
    }
    return Words.say(
        "pattern.short.afterRest." + direction(((Pattern.UnlikeAfterRest) sign).stops()));
  }

  private static List<String> otherSigns(Pattern pattern, List<MarkedSpeed> dial) {
    return pattern.signs().stream()
        .filter(sign -> !(sign instanceof Pattern.WithoutTime))
        .map(sign -> sign(sign, dial))
        .toList();
  }

  private static String means(Pattern pattern, List<MarkedSpeed> dial) {
    String key = "pattern." + Words.key(pattern.kind());
    if (pattern.speeds().isEmpty()) {
      return Words.say(key);
    }
    String speeds = SpeedNames.of(pattern.speeds(), dial);
    Range errors = pattern.errors().orElseThrow();
    String size =
        pattern.kind() == Kind.ONE_ALONE || pattern.kind() == Kind.SOME_SPEEDS
            ? inWords(errors)
            : Numbers.stopsRange(
                Math.min(Math.abs(errors.least()), Math.abs(errors.most())),
                Math.max(Math.abs(errors.least()), Math.abs(errors.most())));
    String said = Words.say(key, speeds, size);
    return pattern.otherErrors().isEmpty()
        ? Words.say("pattern.alone", said)
        : Words.say("pattern.andOthers", said, inWords(pattern.otherErrors().get()));
  }

  /** {@code 0.03 to 0.12 stop slow}, {@code 0.04 stop fast to 0.10 stop slow}. */
  private static String inWords(Range errors) {
    String least = Numbers.stopsInWords(errors.least());
    String most = Numbers.stopsInWords(errors.most());
    if (least.equals(most)) {
      return least;
    }
    if (errors.least() > 0) {
      return Words.say("stops.slow", Numbers.stopsRange(errors.least(), errors.most()));
    }
    return errors.most() < 0
        ? Words.say("stops.fast", Numbers.stopsRange(-errors.most(), -errors.least()))
        : Words.say("table.fromTo", least, most);
  }

  private static String sign(Pattern.Sign sign, List<MarkedSpeed> dial) {
    if (sign instanceof Pattern.WithoutTime without) {
      return Words.say(
          "pattern.sign.withoutTime",
          SpeedNames.of(without.speeds(), dial),
          Sentences.outcome(without.outcome()),
          without.count(),
          without.tries());
    }
    if (sign instanceof Pattern.Scatters scatters) {
      return Words.say(
          "pattern.sign.scatters",
          SpeedNames.of(scatters.speeds(), dial),
          Numbers.stopsRange(scatters.scatter().least(), scatters.scatter().most()));
    }
    if (sign instanceof Pattern.Creeps creeps) {
      return Words.say(
          "pattern.sign.creeps." + direction(creeps.stopsAFiring()),
          SpeedNames.of(creeps.speeds(), dial),
          Numbers.plainStops(Math.abs(creeps.stopsAFiring())));
    }
    Pattern.UnlikeAfterRest unlike = (Pattern.UnlikeAfterRest) sign;
    return Words.say(
        "pattern.sign.afterRest." + direction(unlike.stops()),
        unlike.speed(),
        Numbers.plainStops(Math.abs(unlike.stops())));
  }

  private static String direction(double stops) {
    return stops > 0 ? "slower" : "faster";
  }
}
