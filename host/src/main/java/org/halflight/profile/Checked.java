package org.halflight.profile;

/** Numbers that can be what they are said to be. */
final class Checked {
  private Checked() {}

  static void finite(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("not a finite number: " + value);
    }
  }

  static void uncertainty(double value) {
    if (!(value >= 0 && Double.isFinite(value))) {
      throw new IllegalArgumentException("a standard uncertainty is zero or more, not " + value);
    }
  }
}
