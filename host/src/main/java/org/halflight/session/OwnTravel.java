package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.speeds.DecimalComma;
import org.halflight.speeds.Millimetres;

/**
 * How long the curtains of a camera are to take, by its own figure. A time without its distance
 * says nothing: 32.4 mm against 36 mm are 10 % apart.
 *
 * @param milliseconds that either curtain takes, above 0
 * @param spanMillimetres over which way, above 0
 */
public record OwnTravel(double milliseconds, double spanMillimetres) {
  private static final Pattern WRITTEN =
      Pattern.compile(
          "(\\d{1,3}(?:\\.\\d{1,3})?)\\s*(?:ms)?\\s*(?:over|/)\\s*(\\d{1,3}(?:\\.\\d{1,3})?)\\s*(?:mm)?");

  public OwnTravel {
    if (!(milliseconds > 0) || !(spanMillimetres > 0)) {
      throw new IllegalArgumentException(
          "no travel: " + milliseconds + " ms over " + spanMillimetres + " mm");
    }
  }

  /** The travel that a person wrote: {@code 17 ms over 36 mm} or {@code 17/36}. */
  public static Optional<OwnTravel> find(String text) {
    Matcher written = WRITTEN.matcher(DecimalComma.pointed(text));
    if (!written.matches()) {
      return Optional.empty();
    }
    double milliseconds = Double.parseDouble(written.group(1));
    OptionalDouble span = Millimetres.find(written.group(2));
    return milliseconds > 0 && span.isPresent()
        ? Optional.of(new OwnTravel(milliseconds, span.getAsDouble()))
        : Optional.empty();
  }

  /**
   * By how much a travel over this way takes longer than that, as a share of it; below 0 it is
   * quicker.
   */
  public double excessShare(double seconds) {
    return 1e3 * seconds / milliseconds - 1;
  }

  /** As {@link #find} reads it. */
  public String text() {
    return Millimetres.text(milliseconds) + " ms over " + Millimetres.text(spanMillimetres) + " mm";
  }
}
