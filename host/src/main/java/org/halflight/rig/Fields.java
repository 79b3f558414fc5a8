package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;
import org.halflight.signal.Channel;

/**
 * The fields of one line, visited once from left to right: either taken from its text, or put there
 * from a value. Each visit names the format of the field and where the value keeps it, and gives
 * what stands in the field; so one list of fields serves for both ways.
 *
 * @param <T> what the line says
 */
interface Fields<T> {
  /** Digits of a whole count of ticks. */
  int TICKS_DIGITS = 12;

  List<Channel> CHANNELS = List.of(Channel.values());
  List<ReferenceDrive> DRIVES = List.of(ReferenceDrive.values());

  /** The line counter. */
  int sequence();

  /** A number of a fixed count of hexadecimal digits. */
  long hex(int digits, ToLongFunction<T> from);

  /** A word of A-Z a-z 0-9 . _ -. */
  String word(int charactersMost, Function<T, String> from);

  /** Notes a rule that the values of the line must keep. */
  void require(boolean kept);

  /** A number of a fixed count of hexadecimal digits that is at most {@code most}. */
  default int hex(int digits, int most, ToIntFunction<T> from) {
    long value = hex(digits, from::applyAsInt);
    require(value <= most);
    return (int) Math.min(value, most);
  }

  /** A whole count of ticks. */
  default long ticks(ToLongFunction<T> from) {
    return hex(TICKS_DIGITS, from);
  }

  /** The low 32 bits of a count of ticks. */
  default int low32(ToIntFunction<T> from) {
    return (int) hex(8, value -> Integer.toUnsignedLong(from.applyAsInt(value)));
  }

  default boolean bit(Predicate<T> from) {
    return hex(1, 1, value -> from.test(value) ? 1 : 0) == 1;
  }

  /** One of several things that have numbers on the wire; wrong numbers read as the first. */
  default <C> C coded(int digits, Function<T, C> from, List<C> all, ToIntFunction<C> codeOf) {
    long code = hex(digits, value -> codeOf.applyAsInt(from.apply(value)));
    Optional<C> found = all.stream().filter(each -> codeOf.applyAsInt(each) == code).findFirst();
    require(found.isPresent());
    return found.orElse(all.get(0));
  }

  default Channel channel(Function<T, Channel> from) {
    return coded(1, from, CHANNELS, Channel::code);
  }

  default ReferenceDrive drive(Function<T, ReferenceDrive> from) {
    return coded(1, from, DRIVES, ReferenceDrive::code);
  }
}
