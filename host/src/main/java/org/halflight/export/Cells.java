package org.halflight.export;

import java.util.Locale;
import java.util.OptionalDouble;

/** Fields of a table as text: full precision, no units, empty where nothing is known. */
final class Cells {
  private Cells() {}

  static String millis(double seconds) {
    return String.format(Locale.ROOT, "%.6f", seconds * 1e3);
  }

  static String millis(OptionalDouble seconds) {
    return seconds.isPresent() ? millis(seconds.getAsDouble()) : "";
  }

  static String number(double value) {
    return String.format(Locale.ROOT, "%.6f", value);
  }

  static String number(OptionalDouble value) {
    return value.isPresent() ? number(value.getAsDouble()) : "";
  }
}
