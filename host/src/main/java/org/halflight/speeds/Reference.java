package org.halflight.speeds;

import org.halflight.stored.StoredWords;

/** Which time a marked speed is held against. */
public enum Reference {
  /**
   * The power of two behind a modern marking: 1/60 is 1/64 s, 1/125 is 1/128 s (APEX, ASA
   * PH2.5-1960).
   */
  EXACT,
  /** The marking as it is written: 1/60 is 1/60 s. The only sensible reading of the older dials. */
  LITERAL;

  /** As files store them, and as they are typed. */
  public static final StoredWords<Reference> WORDS =
      StoredWords.of(
          Reference.class,
          reference ->
              switch (reference) {
                case EXACT -> "exact";
                case LITERAL -> "literal";
              });
}
