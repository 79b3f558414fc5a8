package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.extratest.LightLeak;

/** The leak test in sentences. */
final class LeakWords {
  private LeakWords() {}

  static List<String> lines(LightLeak leak) {
    List<String> lines = new ArrayList<>();
    leak.uncocked().ifPresent(reading -> lines.add(line("leak.uncocked", reading)));
    leak.cocked()
        .ifPresent(
            reading -> {
              // What is wrong is said first.
              boolean first = reading.found() == LightLeak.Found.LEAK;
              lines.add(first ? 0 : lines.size(), line("leak.cocked", reading));
            });
    if (leak.uncocked().isEmpty()) {
      lines.add(Words.say("leak.skipped", Words.say("leak.uncocked")));
    }
    if (leak.cocked().isEmpty()) {
      lines.add(Words.say("leak.skipped", Words.say("leak.cocked")));
    }
    return lines;
  }

  private static String line(String state, LightLeak.Reading reading) {
    String shut = Words.say(state);
    return switch (reading.found()) {
      case SHUTTER_OPEN -> Words.say("leak.open", shut);
      case COVERED_BRIGHTER -> Words.say("leak.coveredBrighter", shut);
      case NOTHING ->
          floor(reading)
              .map(stops -> Words.say("leak.nothing", shut, stops))
              .orElseGet(() -> Words.say("leak.nothing.noFull", shut, counts(least(reading))));
      case LEAK -> leak(shut, reading);
    };
  }

  private static String leak(String shut, LightLeak.Reading reading) {
    OptionalDouble below = reading.belowFullStops();
    if (below.isEmpty()) {
      return Words.say(
          "leak.found.noFull", shut, counts(reading.differenceCounts()), counts(least(reading)));
    }
    return Words.say(
        "leak.found",
        shut,
        oneDecimal(below.getAsDouble()),
        Numbers.time(LightLeak.hourSeconds(below.getAsDouble())),
        counts(reading.differenceCounts()),
        counts(least(reading)));
  }

  private static Optional<String> floor(LightLeak.Reading reading) {
    return reading.floorStops().isPresent()
        ? Optional.of(oneDecimal(reading.floorStops().getAsDouble()))
        : Optional.empty();
  }

  private static double least(LightLeak.Reading reading) {
    return LightLeak.COVERAGE * reading.uncertaintyCounts();
  }

  private static String counts(double counts) {
    return String.format(Locale.ROOT, "%.2f", counts);
  }

  private static String oneDecimal(double stops) {
    return String.format(Locale.ROOT, "%.1f", stops);
  }
}
