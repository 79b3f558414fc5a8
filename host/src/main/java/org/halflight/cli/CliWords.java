package org.halflight.cli;

import org.halflight.stored.StoredWords;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Values as they are typed: {@code as-found} for the phase as found. */
final class CliWords {
  private CliWords() {}

  /**
   * The constant of a word.
   *
   * @param option where it was typed
   * @throws Trouble when there is none of that name
   */
  static <E extends Enum<E>> E constant(StoredWords<E> words, String text, String option) {
    return words
        .find(text)
        .orElseThrow(
            () ->
                new Trouble(
                    Words.say("run.unknownWord", option, text, String.join(", ", words.all()))));
  }
}
