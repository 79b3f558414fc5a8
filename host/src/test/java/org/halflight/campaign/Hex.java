package org.halflight.campaign;

/** Numbers as the wire has them. */
final class Hex {
  private static final String DIGITS = "0123456789ABCDEF";

  private Hex() {}

  /** The lowest digits of a number. */
  static String of(int digits, long value) {
    char[] text = new char[digits];
    long rest = value;
    for (int i = digits - 1; i >= 0; i--) {
      text[i] = DIGITS.charAt((int) (rest & 0xF));
      rest >>>= 4;
    }
    return new String(text);
  }
}
