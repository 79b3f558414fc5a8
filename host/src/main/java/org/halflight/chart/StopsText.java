package org.halflight.chart;

import java.util.Locale;

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

  static String of(Span span) {
    return of(span.lowStops()) + " to " + of(span.highStops());
  }

  static String plusMinus(double stops) {
    return String.format(Locale.ROOT, "\u00b1%.2f stop", stops);
  }

  /** A zone seen from the limit that it is around. */
  static String around(Span zone) {
    String below = String.format(Locale.ROOT, "%.2f", -zone.lowStops());
    String above = String.format(Locale.ROOT, "%.2f", zone.highStops());
    return below.equals(above)
        ? plusMinus(zone.highStops())
        : "\u2212" + below + " to +" + above + " stop";
  }

  static String percent(double level) {
    double percent = 100 * level;
    return percent == Math.rint(percent)
        ? String.format(Locale.ROOT, "%.0f %%", percent)
        : String.format(Locale.ROOT, "%.1f %%", percent);
  }
}
