package org.halflight.chart;

import java.util.Locale;
import org.halflight.stats.Interval;
import org.halflight.words.Words;

/** Errors in stops as words. */
final class StopsText {
  private StopsText() {}

  /** Such as {@code 0.31 stop slow}; what rounds to nothing is {@code 0.00 stop}. */
  static String of(double stops) {
    String number = String.format(Locale.ROOT, "%.2f", Math.abs(stops));
    if (number.equals("0.00")) {
      return Words.say("chart.noStops");
    }
    return Words.say(stops > 0 ? "chart.slow" : "chart.fast", number);
  }

  static String of(Interval interval) {
    return between(interval.low(), interval.high());
  }

  static String of(Limits limits) {
    return between(limits.lowStops(), limits.highStops());
  }

  private static String between(double lowStops, double highStops) {
    return Words.say("table.fromTo", of(lowStops), of(highStops));
  }

  /** The unsure zone, seen from the limit that it is around. */
  static String unsure(Limits limits) {
    String below = String.format(Locale.ROOT, "%.2f", limits.unsureBelowStops());
    String above = String.format(Locale.ROOT, "%.2f", limits.unsureAboveStops());
    return below.equals(above)
        ? Words.say("chart.about", above)
        : Words.say("chart.from", below, above);
  }

  static String percent(double level) {
    double percent = 100 * level;
    return percent == Math.rint(percent)
        ? String.format(Locale.ROOT, "%.0f %%", percent)
        : String.format(Locale.ROOT, "%.1f %%", percent);
  }
}
