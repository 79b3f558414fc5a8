package org.halflight.cli;

import java.util.Arrays;
import java.util.Locale;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Values as they are typed: {@code as-found} for AS_FOUND. */
final class CliWords {
  private CliWords() {}

  static String of(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * The value of a word.
   *
   * @param option where it was typed
   * @throws Trouble when there is none of that name
   */
  static <T extends Enum<T>> T word(T[] values, String text, String option) {
    return Arrays.stream(values)
        .filter(value -> of(value).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new Trouble(
                    Words.say(
                        "run.unknownWord",
                        option,
                        text,
                        String.join(", ", Arrays.stream(values).map(CliWords::of).toList()))));
  }
}
