package org.halflight.verdict;

import org.halflight.stored.StoredWords;

/** What a comparison says about the mean of one speed. */
public enum ShiftFinding {
  /** A change is shown. */
  CHANGED,
  /** A change is shown, and also that it is less than a tenth of a stop. */
  CHANGED_BY_LITTLE,
  /** No change is shown, but that any is less than a tenth of a stop. */
  LESS_THAN_A_TENTH,
  /** Neither a change is shown nor that there is none worth a tenth of a stop. */
  NO_EVIDENCE,
  /** Fewer than two timed firings in one of the runs, or firings that are all alike. */
  NOT_COMPARABLE;

  /** As files store them. */
  public static final StoredWords<ShiftFinding> WORDS =
      StoredWords.of(
          ShiftFinding.class,
          shiftFinding ->
              switch (shiftFinding) {
                case CHANGED -> "changed";
                case CHANGED_BY_LITTLE -> "changed-by-little";
                case LESS_THAN_A_TENTH -> "less-than-a-tenth";
                case NO_EVIDENCE -> "no-evidence";
                case NOT_COMPARABLE -> "not-comparable";
              });

  /** Whether a change is shown. */
  public boolean isChange() {
    return this == CHANGED || this == CHANGED_BY_LITTLE;
  }
}
