package org.halflight.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.halflight.extratest.FNumber;
import org.halflight.extratest.StopScale;
import org.halflight.extratest.StopScale.AtStop;
import org.halflight.extratest.StopScale.Verdict;

/** The stop check in sentences. */
final class StopWords {
  /** Less backlash than this is not worth a word: a tenth of a stop. Our choice. */
  private static final double SAID_BACKLASH_STOPS = 0.1;

  private StopWords() {}

  static List<String> lines(StopScale scale) {
    if (scale.trouble().isPresent()) {
      return List.of(trouble(scale, scale.trouble().get()));
    }
    List<String> lines = new ArrayList<>();
    lines.addAll(verdicts(scale));
    for (Verdict verdict : List.of(Verdict.TOO_DARK, Verdict.SATURATED)) {
      List<AtStop> those = scale.having(verdict);
      if (!those.isEmpty()) {
        lines.add(Words.of("stops", verdict, names(those)));
      }
    }
    worstClick(scale).ifPresent(lines::add);
    backlash(scale).ifPresent(lines::add);
    if (scale.driftStops().isEmpty()) {
      lines.add(Words.say("stops.notReturned", name(scale.stops().get(0).number())));
    }
    lines.add(Words.say("stops.numbers", exact(scale)));
    return lines;
  }

  /** The verdict alone. */
  static String inShort(StopScale scale) {
    return scale.trouble().isPresent()
        ? trouble(scale, scale.trouble().get())
        : String.join(" ", verdicts(scale));
  }

  private static List<String> verdicts(StopScale scale) {
    List<String> lines = new ArrayList<>();
    lines.add(first(scale));
    for (Verdict verdict : List.of(Verdict.BRIGHT, Verdict.DARK, Verdict.TOO_CLOSE_TO_CALL)) {
      List<AtStop> those = scale.having(verdict);
      if (!those.isEmpty()) {
        lines.add(Words.of("stops", verdict, withErrors(those)));
      }
    }
    return lines;
  }

  private static String trouble(StopScale scale, StopScale.Trouble trouble) {
    if (trouble == StopScale.Trouble.LAMP_MOVED) {
      double drift = scale.driftStops().orElseThrow();
      return Words.say(
          drift > 0 ? "stops.trouble.lamp-brighter" : "stops.trouble.lamp-darker",
          name(scale.stops().get(0).number()),
          Numbers.plainStops(Math.abs(drift)));
    }
    if (trouble == StopScale.Trouble.SHUTTER_CLOSED) {
      return Words.say("stops.trouble.shutter-closed", name(scale.stops().get(0).number()));
    }
    return Words.of("stops.trouble", trouble);
  }

  private static String first(StopScale scale) {
    int judged = scale.stops().size() - 1;
    int within = scale.having(Verdict.WITHIN).size();
    String tolerance = Numbers.plainStops(scale.toleranceStops());
    String from = name(scale.stops().get(0).number());
    return within == judged
        ? Words.say("stops.allWithin", from, tolerance, judged)
        : Words.say("stops.someWithin", from, tolerance, within, judged);
  }

  private static Optional<String> worstClick(StopScale scale) {
    return scale.clicks().stream()
        .max(Comparator.comparingDouble(click -> Math.abs(click.errorStops())))
        .map(
            click ->
                Words.say(
                    "stops.click",
                    name(click.from()),
                    name(click.to()),
                    size(click.measuredStops()),
                    size(click.markedStops())));
  }

  private static Optional<String> backlash(StopScale scale) {
    List<AtStop> both =
        scale.stops().stream().filter(stop -> stop.backlashStops().isPresent()).toList();
    if (both.size() < 2) {
      return Optional.of(Words.say("stops.oneWay"));
    }
    AtStop worst =
        both.stream()
            .max(Comparator.comparingDouble(s -> Math.abs(s.backlashStops().orElseThrow())))
            .orElseThrow();
    double stops = worst.backlashStops().orElseThrow();
    return Optional.of(
        Math.abs(stops) < SAID_BACKLASH_STOPS
            ? Words.say("stops.backlash.little", size(SAID_BACKLASH_STOPS))
            : Words.say(
                stops > 0 ? "stops.backlash.brighter" : "stops.backlash.darker",
                name(worst.number()),
                Numbers.plainStops(Math.abs(stops))));
  }

  private static String exact(StopScale scale) {
    return scale.stops().stream()
        .map(AtStop::number)
        .map(
            number ->
                number.isFullStop()
                    ? Words.say(
                        "stops.number.full",
                        name(number),
                        String.format(Locale.ROOT, "%.4g", number.exact()))
                    : Words.say("stops.number.engraved", name(number)))
        .collect(Collectors.joining(", "));
  }

  private static String withErrors(List<AtStop> stops) {
    return stops.stream()
        .map(
            stop ->
                Words.say(
                    stop.isWorseOpeningUp() ? "stops.error.openingUp" : "stops.error",
                    name(stop.number()),
                    Numbers.signedStops(stop.worstStops().orElseThrow())))
        .collect(Collectors.joining(", "));
  }

  private static String names(List<AtStop> stops) {
    return stops.stream().map(stop -> name(stop.number())).collect(Collectors.joining(", "));
  }

  private static String name(FNumber number) {
    return "f/" + number.engraved();
  }

  private static String size(double stops) {
    return String.format(Locale.ROOT, "%.2f", stops);
  }
}
