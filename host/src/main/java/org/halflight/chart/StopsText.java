package org.halflight.chart;

import java.util.Locale;
import org.halflight.stats.Interval;

/** Errors in stops as words. */
final class StopsText {
  private StopsText() {}

  /** Such as {@code 0.31 stop slow}; what rounds to nothing is {@code 0.00 stop}. */
  static String of(double stops) {
    String number = String.format(Locale.ROOT, "%.2f", Math.abs(stops));
    if (number.equals("0.00")) {
      return "0.00 stop";
    }
    return number + (stops > 0 ? " stop slow" : " stop fast");
  }

  static String of(Interval interval) {
    return between(interval.low(), interval.high());
  }

  static String of(Limits limits) {
    return between(limits.lowStops(), limits.highStops());
  }

  private static String between(double lowStops, double highStops) {
    return of(lowStops) + " to " + of(highStops);
  }

  /** The unsure zone, seen from the limit that it is around. */
  static String unsure(Limits limits) {
    String below = String.format(Locale.ROOT, "%.2f", limits.unsureBelowStops());
    String above = String.format(Locale.ROOT, "%.2f", limits.unsureAboveStops());
    return below.equals(above)
        ? "\u00b1" + above + " stop"
        : "\u2212" + below + " to +" + above + " stop";
  }

  static String percent(double level) {
    double percent = 100 * level;
    return percent == Math.rint(percent)
        ? String.format(Locale.ROOT, "%.0f %%", percent)
        : String.format(Locale.ROOT, "%.1f %%", percent);
  }
}
