package org.halflight.rig;

import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * Takes the fields from the text of one line and remembers whether all of them were right. A wrong
 * number reads as zero, so that a line can be read to its end and judged once. For one thread.
 */
final class FieldReader<T> implements Fields<T> {
  private final int sequence;
  private final String[] fields;
  private int next;
  private boolean right = true;

  /**
   * @param text fields, each behind one space; may be empty
   */
  FieldReader(int sequence, String text) {
    this.sequence = sequence;
    fields = text.isEmpty() ? new String[0] : text.substring(1).split(" ", -1);
  }

  @Override
  public int sequence() {
    return sequence;
  }

  @Override
  public long hex(int digits, ToLongFunction<T> from) {
    String field = next();
    boolean isNumber = field.length() == digits && LineCodec.areHex(field);
    require(isNumber);
    return isNumber ? Long.parseLong(field, 16) : 0;
  }

  @Override
  public String word(int charactersMost, Function<T, String> from) {
    String field = next();
    require(field.length() <= charactersMost);
    return field;
  }

  @Override
  public void require(boolean kept) {
    right &= kept;
  }

  /** Whether no field was wrong, missing or one too many. */
  boolean isRight() {
    return right && next == fields.length;
  }

  private String next() {
    if (next < fields.length) {
      return fields[next++];
    }
    right = false;
    return "";
  }
}
