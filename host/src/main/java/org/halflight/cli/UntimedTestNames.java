package org.halflight.cli;

import java.util.Locale;
import org.halflight.session.UntimedTest;
import org.halflight.stored.StoredWords;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/** Checks as they are typed. */
final class UntimedTestNames {
  /** In small letters; capitals are typed too. */
  static final StoredWords<UntimedTest> TYPED =
      StoredWords.of(
          UntimedTest.class,
          check ->
              switch (check) {
                case B -> "b";
                case T -> "t";
                case SELF_TIMER -> "self-timer";
                case LINKAGE -> "linkage";
                case RELEASE_ALONE -> "alone";
                case WIND_AND_RELEASE -> "wind";
                case LEAK -> "leak";
                case STOPS -> "stops";
              });

  private UntimedTestNames() {}

  /**
   * The check of a name.
   *
   * @throws Trouble when there is none of that name
   */
  static UntimedTest check(String typed) {
    return TYPED
        .find(typed.strip().toLowerCase(Locale.ROOT))
        .filter(test -> !test.isReadOnly())
        .orElseThrow(
            () ->
                new Trouble(
                    Words.say(
                        "run.unknownCheck", typed, "B, T, self-timer, linkage, leak, stops")));
  }
}
