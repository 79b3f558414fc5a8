package org.halflight.words;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.AdvanceTrial.Reason;

/** The interval that earlier versions measured between film advance and blades, in sentences. */
public final class AdvanceTimingWords {
  private AdvanceTimingWords() {}

  static List<String> lines(AdvanceTiming timing) {
    List<String> lines = new ArrayList<>();
    if (timing.meanSeconds().isEmpty()) {
      lines.add(Words.say("timing.none", reason(timing.newest())));
      return lines;
    }
    double plusMinus = timing.plusMinusSeconds().orElseThrow();
    lines.add(
        Words.say(
            "timing.interval",
            interval(timing.meanSeconds().orElseThrow(), plusMinus),
            millis(plusMinus, plusMinus)));
    timing
        .scatterSeconds()
        .ifPresent(
            scatter ->
                lines.add(
                    Words.say("timing.scatter", millis(scatter, scatter), timing.intervals().n())));
    notTold(timing).ifPresent(lines::add);
    return lines;
  }

  /** The trials without an interval beside others that have one, with the commonest reason. */
  private static Optional<String> notTold(AdvanceTiming timing) {
    Map<Reason, Integer> counts = new EnumMap<>(Reason.class);
    timing.trials().stream()
        .flatMap(trial -> trial.reason().stream())
        .forEach(reason -> counts.merge(reason, 1, Integer::sum));
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    return counts.entrySet().stream()
        .max(Map.Entry.comparingByValue())
        .map(
            most ->
                Words.count(
                    "timing.notTold",
                    all,
                    all,
                    timing.trials().size(),
                    Words.of("timing.reason", most.getKey())));
  }

  /** Why a trial has no interval, in a few words; empty where it has one. */
  public static String reason(AdvanceTrial trial) {
    return trial.reason().map(reason -> Words.of("timing.reason", reason)).orElse("");
  }

  /** An interval: so long before the blades, or after. */
  private static String interval(double seconds, double plusMinusSeconds) {
    return Words.say(
        seconds < 0 ? "timing.after" : "timing.before",
        millis(Math.abs(seconds), plusMinusSeconds));
  }

  /** What told the interval of a trial. */
  public static String by(AdvanceTrial trial) {
    return trial
        .interval()
        .map(told -> Words.say(told.byContact() ? "timing.by.contact" : "timing.by.click"))
        .orElse("");
  }

  /** With its sign, plus where the advance comes first. */
  public static String signed(AdvanceTrial.Interval told) {
    double rounded = Math.round(1e5 * told.seconds()) / 1e2;
    int decimals = decimals(told.plusMinusSeconds());
    return rounded == 0 ? "0 ms" : String.format(Locale.ROOT, "%+." + decimals + "f ms", rounded);
  }

  /** Milliseconds with as many digits as their uncertainty supports. */
  private static String millis(double seconds, double plusMinusSeconds) {
    return String.format(Locale.ROOT, "%." + decimals(plusMinusSeconds) + "f ms", 1e3 * seconds);
  }

  private static int decimals(double plusMinusSeconds) {
    return plusMinusSeconds < 0.95e-4 ? 2 : 1;
  }
}
