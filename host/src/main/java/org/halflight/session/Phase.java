package org.halflight.session;

import org.halflight.stored.StoredWords;

/** Where in the work a run stands. */
public enum Phase {
  /** Before anything was touched; begins with the first firing after rest. */
  AS_FOUND,
  /** In the middle of the work. */
  ADJUSTING,
  /** After the work. */
  AS_LEFT;

  /** As files store them, and as they are typed. */
  public static final StoredWords<Phase> WORDS =
      StoredWords.of(
          Phase.class,
          phase ->
              switch (phase) {
                case AS_FOUND -> "as-found";
                case ADJUSTING -> "adjusting";
                case AS_LEFT -> "as-left";
              });
}
