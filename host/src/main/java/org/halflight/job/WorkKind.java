package org.halflight.job;

import org.halflight.stored.StoredWords;

/** What an entry of the work log tells. */
public enum WorkKind {
  FOUND,
  CLEANED,
  LUBRICATED,
  ADJUSTED,
  REPLACED,
  NOTE;

  /** As files store them. */
  public static final StoredWords<WorkKind> WORDS =
      StoredWords.of(
          WorkKind.class,
          workKind ->
              switch (workKind) {
                case FOUND -> "found";
                case CLEANED -> "cleaned";
                case LUBRICATED -> "lubricated";
                case ADJUSTED -> "adjusted";
                case REPLACED -> "replaced";
                case NOTE -> "note";
              });
}
