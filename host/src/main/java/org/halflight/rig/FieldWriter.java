package org.halflight.rig;

import java.util.Locale;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/** Puts the fields of a value behind each other. For one thread. */
final class FieldWriter<T> implements Fields<T> {
  private final StringBuilder body = new StringBuilder();
  private final int sequence;
  private final T value;

  FieldWriter(char kind, int sequence, T value) {
    this.sequence = sequence;
    this.value = value;
    body.append(kind);
    hex(4, it -> sequence);
  }

  @Override
  public int sequence() {
    return sequence;
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalArgumentException when it does not fit
   */
  @Override
  public long hex(int digits, ToLongFunction<T> from) {
    long number = from.applyAsLong(value);
    if (number < 0 || number >>> (4 * digits) != 0) {
      throw new IllegalArgumentException(number + " does not fit into " + digits + " digits");
    }
    body.append(' ').append(String.format(Locale.ROOT, "%0" + digits + "X", number));
    return number;
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalArgumentException when it is empty, too long or has other characters
   */
  @Override
  public String word(int charactersMost, Function<T, String> from) {
    String word = from.apply(value);
    if (word.isEmpty()
        || word.length() > charactersMost
        || !word.chars().allMatch(LineCodec::isWordCharacter)) {
      throw new IllegalArgumentException(
          "not a word of 1 to " + charactersMost + " of A-Z a-z 0-9 . _ -: '" + word + "'");
    }
    body.append(' ').append(word);
    return word;
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalArgumentException when it is not kept
   */
  @Override
  public void require(boolean kept) {
    if (!kept) {
      throw new IllegalArgumentException("no line of the protocol: " + value);
    }
  }

  String body() {
    return body.toString();
  }
}
