package org.halflight.rig;

import java.util.Locale;

/** Puts the fields of one line behind each other. For one thread. */
final class FieldWriter {
  private final StringBuilder body = new StringBuilder();

  FieldWriter(char kind, int sequence) {
    body.append(kind);
    hex(4, sequence);
  }

  /**
   * A number in a fixed count of hexadecimal digits.
   *
   * @throws IllegalArgumentException when it does not fit
   */
  FieldWriter hex(int digits, long value) {
    if (value < 0 || value >>> (4 * digits) != 0) {
      throw new IllegalArgumentException(value + " does not fit into " + digits + " digits");
    }
    body.append(' ').append(String.format(Locale.ROOT, "%0" + digits + "X", value));
    return this;
  }

  FieldWriter bit(boolean value) {
    return hex(1, value ? 1 : 0);
  }

  /**
   * A word of the characters of a word.
   *
   * @throws IllegalArgumentException when it is empty or has others
   */
  FieldWriter word(String word) {
    if (word.isEmpty() || !word.chars().allMatch(c -> LineCodec.isWordCharacter((char) c))) {
      throw new IllegalArgumentException("not a word of A-Z a-z 0-9 . _ -: '" + word + "'");
    }
    body.append(' ').append(word);
    return this;
  }

  String body() {
    return body.toString();
  }
}
