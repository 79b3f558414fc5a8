package org.halflight.words;

import java.time.LocalDate;
import java.util.Locale;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.ThirdsOfStop;

/** Numbers as a person reads them, always with their unit and with a point before the decimals. */
public final class Numbers {
  /**
   * A figure and its unit, for places that set them in letters of unlike size.
   *
   * @param figure as it is read
   * @param unit empty where the figure holds its units already
   */
  public record InUnit(String figure, String unit) {
    /** Both, as they stand in a sentence. */
    public String text() {
      return unit.isEmpty() ? figure : figure + " " + unit;
    }
  }

  private Numbers() {}

  /** A time with three significant digits: {@code 1.02 s}, {@code 15.6 ms}, {@code 0.953 ms}. */
  public static String time(double seconds) {
    return Math.abs(seconds) >= 0.99995
        ? significant(seconds) + " s"
        : significant(seconds * 1e3) + " ms";
  }

  /**
   * A time that is still running: {@code 4.2 s}, {@code 20 min 05 s}, {@code 1 h 02 min 05 s}; from
   * a minute up in whole seconds that have passed.
   */
  public static String running(double seconds) {
    return runningInUnits(seconds).text();
  }

  /** The same in its parts; in several units there is no one unit to name. */
  public static InUnit runningInUnits(double seconds) {
    if (seconds >= 59.95) {
      long whole = (long) Math.floor(Math.max(60, seconds));
      String rest = String.format(Locale.ROOT, "%02d", whole % 60);
      return new InUnit(
          whole < 3600
              ? Words.say("running.minutes", whole / 60, rest)
              : Words.say(
                  "running.hours",
                  whole / 3600,
                  String.format(Locale.ROOT, "%02d", whole / 60 % 60),
                  rest),
          "");
    }
    return new InUnit(String.format(Locale.ROOT, "%.1f", seconds), "s");
  }

  /** A day as a person writes it: {@code 3 January 2026}. */
  public static String date(LocalDate day) {
    return date("month", day);
  }

  /** The same where there is little room: {@code 3 Jan 2026}. */
  public static String shortDate(LocalDate day) {
    return date("month.short", day);
  }

  private static String date(String months, LocalDate day) {
    return Words.say("date", day.getDayOfMonth(), Words.of(months, day.getMonth()), day.getYear());
  }

  /**
   * A time in milliseconds with three significant digits and no unit, for the column of a table.
   */
  public static String millis(double seconds) {
    return significant(seconds * 1e3);
  }

  /**
   * A time as the fraction that a dial would show: {@code 1/64 s}; from 0.3 s up in seconds: {@code
   * 0.98 s}.
   */
  public static String fraction(double seconds) {
    return fractionInUnit(seconds).text();
  }

  /** The same in its parts. */
  public static InUnit fractionInUnit(double seconds) {
    if (isReadInSeconds(seconds)) {
      return new InUnit(significant(seconds), "s");
    }
    double denominator = 1 / seconds;
    return new InUnit(
        "1/"
            + (denominator < 9.95
                ? significant2(denominator)
                : String.valueOf(Math.round(denominator))),
        "s");
  }

  /** A time in milliseconds, from 0.3 s up in seconds, in its parts. */
  public static InUnit timeInUnit(double seconds) {
    return isReadInSeconds(seconds)
        ? new InUnit(significant(seconds), "s")
        : new InUnit(millis(seconds), "ms");
  }

  /**
   * A time beside the one it should be, both in the unit of that: {@code 432 ms, wanted 125 ms}.
   */
  public static String timeAndWanted(double seconds, double wantedSeconds) {
    boolean inSeconds = isReadInSeconds(wantedSeconds);
    return Words.say(
        "numbers.timeAndWanted",
        inSeconds ? significant(seconds) + " s" : millis(seconds) + " ms",
        timeInUnit(wantedSeconds).text());
  }

  /**
   * A time as a fraction beside the one it should be, {@code 1/252, target 1/256}: by itself, 1/252
   * looks fast on a dial that says 1/250. Empty where times are read in seconds.
   */
  public static String fractionAndTarget(double seconds, double targetSeconds) {
    return isReadInSeconds(seconds) || isReadInSeconds(targetSeconds)
        ? ""
        : Words.say(
            "numbers.fractionAndTarget",
            fractionInUnit(seconds).figure(),
            fractionInUnit(targetSeconds).figure());
  }

  /** A time, and as a fraction beside its target: {@code 3.97 ms (1/252, target 1/256)}. */
  public static String timeAndTarget(double seconds, double targetSeconds) {
    String fraction = fractionAndTarget(seconds, targetSeconds);
    String time = timeInUnit(seconds).text();
    return fraction.isEmpty() ? time : Words.say("numbers.inBrackets", time, fraction);
  }

  /** Whether a time is read in seconds as it is, and not as a fraction of one. */
  public static boolean isReadInSeconds(double seconds) {
    return !(seconds > 0 && seconds < 0.3);
  }

  /** A marked speed as it is spoken of: {@code 1/60}, and {@code 2 s} for whole seconds. */
  public static String speed(MarkedSpeed speed) {
    return speed.label().contains("/") ? speed.label() : speed.label() + " s";
  }

  /** How long a shutter rested: {@code 40 min}, {@code 6 h}, {@code 12 days}. */
  public static String rest(double seconds) {
    if (seconds < 2 * 3600) {
      return Words.say("rest.minutes", Math.round(seconds / 60));
    }
    return seconds < 2 * 86_400
        ? Words.say("rest.hours", Math.round(seconds / 3600))
        : Words.say("rest.days", Math.round(seconds / 86_400));
  }

  /** An error with its sign: {@code +0.42 stop}. */
  public static String signedStops(double stops) {
    return Words.say("numbers.stops", bareStops(stops));
  }

  /** An error in words: {@code 0.42 stop slow}, {@code 0.10 stop fast}, {@code on time}. */
  public static String stopsInWords(double stops) {
    double rounded = withoutNegativeZero(stops, 2);
    if (rounded == 0) {
      return Words.say("stops.onTime");
    }
    return Words.say(rounded > 0 ? "stops.slow" : "stops.fast", plainStops(Math.abs(rounded)));
  }

  /** A size in stops without a sign: {@code 0.42 stop}. */
  public static String plainStops(double stops) {
    return Words.say("numbers.stops", bareSize(stops));
  }

  /** Two sizes in stops without signs: {@code 0.49 to 0.95 stop}; one where both look the same. */
  public static String stopsRange(double low, double high) {
    String least = String.format(Locale.ROOT, "%.2f", low);
    String most = plainStops(high);
    return bareSize(high).equals(least) ? most : Words.say("table.fromTo", least, most);
  }

  /** An error with its sign and without its unit, for the column of a table: {@code +0.42}. */
  public static String bareStops(double stops) {
    return String.format(Locale.ROOT, "%+.2f", withoutNegativeZero(stops, 2));
  }

  /** The same in large letters, with a minus as wide as the plus. */
  public static String largeStops(double stops) {
    return withoutNegativeZero(stops, 2) == 0
        ? bareSize(0)
        : bareStops(stops).replace('-', '\u2212');
  }

  /** A size in stops without sign and unit, for the column of a table: {@code 0.42}. */
  public static String bareSize(double stops) {
    return String.format(Locale.ROOT, "%.2f", stops);
  }

  /** A share in percent: {@code 72 %}; below ten with one decimal. */
  public static String percent(double share) {
    double percent = share * 100;
    return String.format(Locale.ROOT, Math.abs(percent) < 9.95 ? "%.1f %%" : "%.0f %%", percent);
  }

  /**
   * Thirds of a stop as they stand on a dial: {@code +\u2153}, {@code \u22121\u2154}, {@code 0}.
   */
  public static String thirds(ThirdsOfStop thirds) {
    int size = Math.abs(thirds.thirds());
    if (size == 0) {
      return "0";
    }
    String whole = size >= 3 ? String.valueOf(size / 3) : "";
    String part = size % 3 == 1 ? "\u2153" : size % 3 == 2 ? "\u2154" : "";
    return (thirds.thirds() > 0 ? "+" : "\u2212") + whole + part;
  }

  /** A chance as people write it: {@code 0.032}; {@code below 0.001} where it is smaller. */
  public static String chance(double p) {
    return p < 0.001
        ? Words.say("chance.small")
        : String.format(Locale.ROOT, p < 0.0995 ? "%.3f" : "%.2f", p);
  }

  private static String significant(double value) {
    double size = Math.abs(value);
    if (size == 0) {
      return "0";
    }
    int decimals = Math.max(0, 2 - (int) Math.floor(Math.log10(size * 1.0000001)));
    return String.format(Locale.ROOT, "%." + Math.min(decimals, 6) + "f", value);
  }

  private static String significant2(double value) {
    return String.format(Locale.ROOT, "%.1f", value).replace(".0", "");
  }

  static double withoutNegativeZero(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.round(value * scale) / scale + 0.0;
  }
}
