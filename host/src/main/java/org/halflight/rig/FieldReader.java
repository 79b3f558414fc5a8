package org.halflight.rig;

import java.util.Optional;
import java.util.function.Supplier;
import org.halflight.signal.Channel;

/**
 * Takes the fields of one line from left to right and remembers whether all of them were right. A
 * wrong field reads as zero, so that a line can be read to its end and judged once. For one thread.
 */
final class FieldReader {
  private final String[] fields;
  private int next;
  private boolean right = true;

  /**
   * @param text fields, each behind one space; may be empty
   */
  FieldReader(String text) {
    fields = text.isEmpty() ? new String[0] : text.substring(1).split(" ", -1);
  }

  static boolean isHexDigit(char c) {
    return isIn(c, '0', '9') || isIn(c, 'A', 'F') || isIn(c, 'a', 'f');
  }

  static boolean isIn(char c, char first, char last) {
    return c >= first && c <= last;
  }

  /** A number of a fixed count of hexadecimal digits. */
  long hex(int digits) {
    String field = take();
    if (field.length() != digits || !field.chars().allMatch(c -> isHexDigit((char) c))) {
      right = false;
      return 0;
    }
    return Long.parseLong(field, 16);
  }

  /** A number of a fixed count of hexadecimal digits that is at most {@code most}. */
  int hex(int digits, int most) {
    long value = hex(digits);
    require(value <= most);
    return right ? (int) value : 0;
  }

  boolean bit() {
    return hex(1, 1) == 1;
  }

  Channel channel() {
    Optional<Channel> channel = Channel.ofCode(hex(1, 15));
    require(channel.isPresent());
    return channel.orElse(Channel.CENTRE_LOW);
  }

  /** A sensor that has light blocks. */
  Channel lightSensor() {
    Channel channel = channel();
    require(LightSensors.has(channel));
    return channel;
  }

  String word(int charactersMost) {
    String field = take();
    require(field.length() <= charactersMost);
    return field;
  }

  /** Notes a rule between fields that the line must keep. */
  void require(boolean kept) {
    right &= kept;
  }

  /** What the fields make, or empty when one was wrong, missing or too many. */
  <T> Optional<T> make(Supplier<T> maker) {
    return right && next == fields.length ? Optional.of(maker.get()) : Optional.empty();
  }

  private String take() {
    if (next < fields.length) {
      return fields[next++];
    }
    right = false;
    return "";
  }
}
