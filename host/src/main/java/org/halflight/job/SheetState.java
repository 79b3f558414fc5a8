package org.halflight.job;

import org.halflight.stored.StoredWords;

/** What holds of a line of the strip sheet. */
public enum SheetState {
  /** It is noted, and asked back where its item is. */
  NOTED,
  /** At assembly it was ticked: it is back in, or set as it was. */
  BACK,
  /** It was noted by mistake. */
  STRUCK;

  /** As files store them. */
  public static final StoredWords<SheetState> WORDS =
      StoredWords.of(
          SheetState.class,
          state ->
              switch (state) {
                case NOTED -> "noted";
                case BACK -> "back";
                case STRUCK -> "struck";
              });
}
