package org.halflight.extratest;

import java.util.Locale;
import java.util.Optional;
import org.halflight.speeds.DecimalComma;

/**
 * A stop of a lens as engraved, and the f-number behind it. The full stops are the powers of the
 * square root of two, so that each passes half the light of the one before: f/5.6 is 5.657 and f/11
 * is 11.31. Any other marking (3.5, 4.5, 6.3) is taken as it is engraved.
 *
 * @param engraved such as 5.6
 */
public record FNumber(String engraved) {
  private static final String[] FULL_STOPS = {
    "1", "1.4", "2", "2.8", "4", "5.6", "8", "11", "16", "22", "32", "45", "64", "90"
  };

  private static final double LEAST = 0.5;
  private static final double MOST = 200;

  public FNumber {
    if (!isNumber(engraved)) {
      throw new IllegalArgumentException("not an f-number: " + engraved);
    }
  }

  /** The stop of a marking such as {@code 5.6}, {@code f/5.6} or {@code 5,6}. */
  public static Optional<FNumber> find(String marking) {
    String plain = DecimalComma.pointed(marking).toLowerCase(Locale.ROOT);
    String bare = plain.startsWith("f/") ? plain.substring(2) : plain;
    String number = bare.endsWith(".0") ? bare.substring(0, bare.length() - 2) : bare;
    return isNumber(number) ? Optional.of(new FNumber(number)) : Optional.empty();
  }

  private static boolean isNumber(String text) {
    return text.matches("\\d{1,3}(\\.\\d{1,2})?")
        && Double.parseDouble(text) >= LEAST
        && Double.parseDouble(text) <= MOST;
  }

  /** Whether it is a full stop, so that its exact f-number is used instead of the engraved one. */
  public boolean isFullStop() {
    return place() >= 0;
  }

  /** The f-number that the marking stands for. */
  public double exact() {
    int place = place();
    return place >= 0 ? Math.pow(2, place / 2.0) : Double.parseDouble(engraved);
  }

  /** The aperture value, {@code 2 log2(N)}: one more is half the light (APEX). */
  public double apertureValue() {
    int place = place();
    return place >= 0 ? place : 2 * Math.log(exact()) / Math.log(2);
  }

  private int place() {
    for (int i = 0; i < FULL_STOPS.length; i++) {
      if (FULL_STOPS[i].equals(engraved)) {
        return i;
      }
    }
    return -1;
  }
}
