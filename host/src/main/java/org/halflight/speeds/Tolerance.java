package org.halflight.speeds;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How far a shutter may be off, the user's choice.
 *
 * <p>The usual one, a third of a stop and half a stop at the top speed, is trade custom: no
 * standard's limit.
 *
 * @param slowStops greatest error on the slow side (too much exposure), above 0
 * @param fastStops greatest error on the fast side, above 0, as a size
 */
public record Tolerance(double slowStops, double fastStops) {
  /** A third of a stop either way. Trade custom. */
  public static final Tolerance THIRD = new Tolerance(1 / 3.0, 1 / 3.0);

  /** Half a stop either way. Trade custom, at the top speed. */
  public static final Tolerance HALF = new Tolerance(0.5, 0.5);

  private static final String NUMBER = "(\\d{1,3}(?:\\.\\d{1,6})?)";

  private static final Pattern STOPS = Pattern.compile(NUMBER);
  private static final Pattern PART = Pattern.compile("(\\d{1,2})\\s*/\\s*(\\d{1,2})");
  private static final Pattern PERCENT = Pattern.compile(NUMBER + "\\s*%");
  private static final Pattern SIDES = Pattern.compile("\\+" + NUMBER + "\\s*-" + NUMBER);

  public Tolerance {
    if (!(slowStops > 0 && slowStops < 100 && fastStops > 0 && fastStops < 100)) {
      throw new IllegalArgumentException(
          "tolerances are above 0 stops: " + slowStops + " slow, " + fastStops + " fast");
    }
  }

  /** The usual tolerance of a marked speed on its dial. Trade custom. */
  public static Tolerance usual(Dial dial, MarkedSpeed speed) {
    return speed.equals(dial.top()) && dial.speeds().size() > 1 ? HALF : THIRD;
  }

  /**
   * A tolerance in percent of the time, plus or minus: unlike on both sides in stops, {@code log2(1
   * + p / 100)} slow and {@code -log2(1 - p / 100)} fast.
   *
   * @param percent above 0 and below 100
   */
  public static Tolerance ofPercent(double percent) {
    if (!(percent > 0 && percent < 100)) {
      throw new IllegalArgumentException("a tolerance is above 0 and below 100 %: " + percent);
    }
    return new Tolerance(Stops.between(1 + percent / 100, 1), -Stops.between(1 - percent / 100, 1));
  }

  /**
   * Reads stops either way, {@code 0.33}, {@code 0,33} or {@code 1/3}, stops slow and fast, {@code
   * +0.5-0.3}, or a percentage of the time, {@code 10%}.
   *
   * @return empty where this is no tolerance
   */
  public static Optional<Tolerance> find(String text) {
    String written = DecimalComma.pointed(text);
    Matcher stops = STOPS.matcher(written);
    Matcher part = PART.matcher(written);
    Matcher percent = PERCENT.matcher(written);
    Matcher sides = SIDES.matcher(written);
    try {
      if (stops.matches()) {
        double both = Double.parseDouble(stops.group(1));
        return Optional.of(new Tolerance(both, both));
      }
      if (part.matches()) {
        double both =
            rounded(Double.parseDouble(part.group(1)) / Double.parseDouble(part.group(2)));
        return Optional.of(new Tolerance(both, both));
      }
      if (percent.matches()) {
        Tolerance share = ofPercent(Double.parseDouble(percent.group(1)));
        return Optional.of(new Tolerance(rounded(share.slowStops), rounded(share.fastStops)));
      }
      return sides.matches()
          ? Optional.of(
              new Tolerance(Double.parseDouble(sides.group(1)), Double.parseDouble(sides.group(2))))
          : Optional.empty();
    } catch (IllegalArgumentException tooLargeOrNothing) {
      return Optional.empty();
    }
  }

  /** What is written down is the same when it is read again. */
  private static double rounded(double stops) {
    return stops == THIRD.slowStops ? stops : Math.rint(stops * 1e6) / 1e6;
  }

  /** As {@link #find} reads it, to a millionth of a stop. */
  public String text() {
    if (equals(THIRD)) {
      return "1/3";
    }
    return slowStops == fastStops
        ? number(slowStops)
        : "+" + number(slowStops) + "-" + number(fastStops);
  }

  private static String number(double stops) {
    String digits = String.format(Locale.ROOT, "%.6f", stops);
    return digits.replaceAll("0+$", "").replaceAll("\\.$", "");
  }

  /** The slow limit in percent of the time, above 0. */
  public double slowPercent() {
    return 100 * (Stops.ratio(slowStops) - 1);
  }

  /** The fast limit in percent of the time, above 0, as a size. */
  public double fastPercent() {
    return 100 * (1 - Stops.ratio(-fastStops));
  }

  /** Whether an error lies on or between the limits. */
  public boolean contains(double errorStops) {
    return errorStops <= slowStops && errorStops >= -fastStops;
  }
}
