package org.halflight.job;

import org.halflight.stored.StoredWords;

/** How an item of a list was found. */
public enum CheckState {
  OK,
  FAULT,
  NOT_TESTED;

  /** As files store them. */
  public static final StoredWords<CheckState> WORDS =
      StoredWords.of(
          CheckState.class,
          checkState ->
              switch (checkState) {
                case OK -> "ok";
                case FAULT -> "fault";
                case NOT_TESTED -> "not-tested";
              });
}
