package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.halflight.session.FiringCondition;
import org.halflight.session.FiringConditions;
import org.halflight.session.FiringResult;
import org.halflight.stats.Sample;
import org.halflight.verdict.UnderConditions;

/** The special conditions of firings, in words. */
public final class ConditionWords {
  private ConditionWords() {}

  /** What a condition is called. */
  public static String of(FiringCondition condition) {
    return Words.say("condition." + FiringCondition.WORDS.word(condition));
  }

  /** Conditions with commas between; says so where there are none. */
  public static String list(FiringConditions conditions) {
    return conditions.isEmpty()
        ? Words.say("condition.none")
        : conditions.said().stream().map(ConditionWords::of).collect(Collectors.joining(", "));
  }

  /** The letters beside a mark in a picture; empty for none. */
  public static String letters(FiringConditions conditions) {
    return conditions.said().stream()
        .map(each -> Words.say("condition.letter." + FiringCondition.WORDS.word(each)))
        .collect(Collectors.joining());
  }

  /** What the firings of a mean share, and what is kept apart from it. */
  static List<String> ofSpeed(UnderConditions of) {
    List<String> said = new ArrayList<>();
    of.ofMean()
        .filter(its -> !its.isEmpty())
        .ifPresent(its -> said.add(Words.say("speed.under", list(its))));
    if (!of.apart().isEmpty()) {
      said.add(
          Words.say(
              "speed.apart",
              of.apart().entrySet().stream()
                  .map(
                      each ->
                          Words.say(
                              "speed.apart.one",
                              list(each.getKey()),
                              each.getValue().n(),
                              mean(each.getValue())))
                  .collect(Collectors.joining("; "))));
    }
    return said;
  }

  /** The mean error of some firings, in words. */
  public static String mean(Sample errors) {
    return Numbers.stopsInWords(errors.mean().known().orElseThrow());
  }

  /** What was just said of a firing. */
  static String ofFiring(FiringResult firing) {
    return Words.say(
        firing.conditions().isEmpty() ? "news.firingUnder.none" : "news.firingUnder",
        firing.number(),
        list(firing.conditions()));
  }

  /** What holds from the next firing on. */
  static String fromNow(FiringConditions conditions) {
    return conditions.isEmpty()
        ? Words.say("news.conditions.none")
        : Words.say("news.conditions", list(conditions));
  }
}
