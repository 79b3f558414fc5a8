package org.halflight.campaign;

/** The check of a line, worked out from the words of docs/protocol.md. */
final class Crc {
  private static final int POLYNOMIAL = 0x1021;
  private static final int[] OF_BYTE = new int[256];

  static {
    for (int value = 0; value < 256; value++) {
      int rest = value << 8;
      for (int bit = 0; bit < 8; bit++) {
        rest = (rest & 0x8000) == 0 ? rest << 1 : rest << 1 ^ POLYNOMIAL;
      }
      OF_BYTE[value] = rest & 0xFFFF;
    }
  }

  private Crc() {}

  /** The check value of characters of one byte each. */
  static int of(CharSequence text) {
    int rest = 0xFFFF;
    for (int i = 0; i < text.length(); i++) {
      rest = (rest << 8 ^ OF_BYTE[(rest >> 8 ^ text.charAt(i)) & 0xFF]) & 0xFFFF;
    }
    return rest;
  }

  /** A line with its check behind it. */
  static String sealed(String body) {
    return body + '#' + Hex.of(4, of(body));
  }

  /** Whether a line ends with the check that fits what stands before it. */
  static boolean fits(String line) {
    int mark = line.length() - 5;
    return mark > 0
        && line.charAt(mark) == '#'
        && Hex.of(4, of(line.substring(0, mark))).equalsIgnoreCase(line.substring(mark + 1));
  }
}
