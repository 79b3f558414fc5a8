package org.halflight.speeds;

import java.math.BigDecimal;
import java.util.OptionalDouble;

/** Lengths as people type them, in millimetres. */
public final class Millimetres {
  private Millimetres() {}

  /** The length that a person wrote, such as {@code 5}, {@code 0,5} or {@code 0.5 mm}; above 0. */
  public static OptionalDouble find(String typed) {
    String number = DecimalComma.pointed(typed).replaceFirst("\\s*mm$", "");
    if (!number.matches("\\d{1,5}(?:\\.\\d{1,3})?")) {
      return OptionalDouble.empty();
    }
    double length = Double.parseDouble(number);
    return length > 0 ? OptionalDouble.of(length) : OptionalDouble.empty();
  }

  /** As {@link #find} reads it, without a zero that says nothing. */
  public static String text(double millimetres) {
    return BigDecimal.valueOf(millimetres).stripTrailingZeros().toPlainString();
  }
}
