package org.halflight.session;

import org.halflight.stored.StoredWords;

/** What the person finds when they try the film advance after a press. */
public enum WindState {
  /** It turns: the advance is unlocked. */
  TURNS,
  /** It does not turn. */
  LOCKED;

  /** As files and the record spell them. */
  public static final StoredWords<WindState> WORDS =
      StoredWords.of(
          WindState.class,
          wind ->
              switch (wind) {
                case TURNS -> "turns";
                case LOCKED -> "locked";
              });
}
