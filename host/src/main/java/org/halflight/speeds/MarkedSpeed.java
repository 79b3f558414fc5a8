package org.halflight.speeds;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A timed setting of a dial. B and T are no marked speeds: they are checks without a time.
 *
 * @param label as engraved, for example {@code 1/60} or {@code 2}
 * @param literalSeconds the marking taken as it is written
 * @param exactSeconds the power of two nearest to it, or of a third of a stop; see {@link #find}
 */
public record MarkedSpeed(String label, double literalSeconds, double exactSeconds) {
  /**
   * A marking within this many stops of a power of two stands for it: the modern markings stray by
   * up to 0.093 stop (1/15, 1/30, 1/60, 15 s, 30 s).
   */
  private static final double ROUNDING_STOPS = 0.1;

  private static final Pattern FRACTION = Pattern.compile("1\\s*/\\s*(\\d{1,6}(?:\\.\\d{1,6})?)");
  private static final Pattern SECONDS = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,6})?)");

  public MarkedSpeed {
    if (!(literalSeconds > 0) || !(exactSeconds > 0)) {
      throw new IllegalArgumentException("a marked speed is above zero: " + label);
    }
  }

  /**
   * Reads a marking: {@code 1/60}, {@code 2}, {@code 1s}, {@code 0.5}. A decimal that is one part
   * of a whole number of parts becomes the fraction that a dial would show, {@code 0.5} is {@code
   * 1/2}.
   *
   * <p>The exact time is {@code 2^k} s where the marking lies within 0.1 stop of it (APEX, ASA
   * PH2.5-1960: {@code Tv = log2(1 / T)} is a whole number), and else the nearest third of a stop,
   * {@code 2^(k/3)} s: 1/400 is {@code 2^(-26/3)} s.
   *
   * @return empty where this is no marking of a time
   */
  public static Optional<MarkedSpeed> find(String text) {
    String marking = DecimalComma.pointed(text);
    if (marking.endsWith("s")) {
      marking = marking.substring(0, marking.length() - 1).strip();
    }
    Matcher fraction = FRACTION.matcher(marking);
    if (fraction.matches()) {
      double parts = Double.parseDouble(fraction.group(1));
      return parts > 0 ? Optional.of(of("1/" + fraction.group(1), 1 / parts)) : Optional.empty();
    }
    if (!SECONDS.matcher(marking).matches() || Double.parseDouble(marking) == 0) {
      return Optional.empty();
    }
    double seconds = Double.parseDouble(marking);
    long parts = Math.round(1 / seconds);
    return parts > 1 && Math.abs(parts * seconds - 1) < 1e-9
        ? Optional.of(of("1/" + parts, 1.0 / parts))
        : Optional.of(of(marking, seconds));
  }

  /**
   * Reads a marking like {@link #find}.
   *
   * @throws IllegalArgumentException where this is no marking of a time
   */
  public static MarkedSpeed parse(String text) {
    return find(text)
        .orElseThrow(() -> new IllegalArgumentException("not a marked speed: '" + text + "'"));
  }

  private static MarkedSpeed of(String label, double literalSeconds) {
    return new MarkedSpeed(label, literalSeconds, exact(literalSeconds));
  }

  private static double exact(double literalSeconds) {
    double stops = Stops.between(literalSeconds, 1);
    return Math.abs(stops - Math.rint(stops)) <= ROUNDING_STOPS
        ? Stops.ratio(Math.rint(stops))
        : Stops.ratio(Math.rint(3 * stops) / 3);
  }

  /** The reference time in seconds under a reading of the marking. */
  public double seconds(Reference reference) {
    return reference == Reference.EXACT ? exactSeconds : literalSeconds;
  }

  /** Whether the marking stands for a power of two, as every whole stop of a modern dial does. */
  public boolean standsForPowerOfTwo() {
    double stops = Stops.between(literalSeconds, 1);
    return Math.abs(stops - Math.rint(stops)) <= ROUNDING_STOPS;
  }

  @Override
  public String toString() {
    return label;
  }
}
