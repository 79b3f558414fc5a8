package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.session.RunOption;
import org.halflight.verdict.CurtainChange;
import org.halflight.verdict.MovedSince;
import org.halflight.verdict.MovedSince.Answer;
import org.halflight.verdict.MovedSince.Part;
import org.halflight.verdict.MovedSince.Why;
import org.halflight.verdict.OutcomeChange;

/** Whether a shutter has moved since it went back, in one line. */
public final class MovedWords {
  private MovedWords() {}

  /**
   * The question with its answer.
   *
   * @param left the day of the visit before
   */
  public static String line(MovedSince moved, String left) {
    List<String> sentences = new ArrayList<>();
    sentences.add(Words.say("moved.question", left));
    for (OutcomeChange failure : moved.failures()) {
      sentences.add(
          Words.say(
              "moved.failure",
              Sentences.outcome(failure.outcome()),
              failure.countAfter(),
              failure.triesAfter(),
              failure.triesBefore()));
    }
    sentences.add(Words.say("moved.exercised", part(moved.exercised())));
    sentences.add(Words.say("moved.afterRest", part(moved.afterRest())));
    return String.join(" ", sentences);
  }

  /** What became of the curtains, in one line; empty where nothing is known of them. */
  public static Optional<String> curtains(MovedSince moved) {
    if (moved.curtains().isEmpty()) {
      return Optional.empty();
    }
    List<String> changed =
        moved.curtains().stream()
            .filter(CurtainChange::isChanged)
            .map(CurtainWords::change)
            .toList();
    return Optional.of(
        changed.isEmpty() ? Words.say("moved.curtains.same") : String.join(" ", changed));
  }

  private static String part(Part part) {
    if (part instanceof Part.NotComparable not) {
      return not.why() == Why.OTHER_SETUP
          ? Words.say(
              "moved.not.other-setup",
              not.names().stream().map(MovedWords::option).collect(Collectors.joining(", ")))
          : Words.of("moved.not", not.why());
    }
    Part.Compared its = (Part.Compared) part;
    boolean several = its.answer() == Answer.MOVED && its.speed().isPresent() && its.speeds() > 1;
    return Words.of(
        several ? "moved.several" : "moved.answer",
        its.answer(),
        its.speed().map(Numbers::speed).orElseGet(() -> Words.say("moved.dial")),
        ComparisonWords.shift(its.stops()),
        Numbers.bareSize(its.uncertaintyStops()),
        its.changed(),
        its.speeds());
  }

  private static String option(String name) {
    return RunOption.CONDITIONS.stream()
        .filter(option -> option.name().equals(name))
        .findFirst()
        .map(OptionWords::label)
        .orElse(name);
  }
}
