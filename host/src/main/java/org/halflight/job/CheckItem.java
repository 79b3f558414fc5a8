package org.halflight.job;

import org.halflight.stored.StoredWords;

/** What is looked at when a camera comes in and before it goes back. Common practice, no source. */
public enum CheckItem {
  BLADES,
  OIL_ON_BLADES,
  STOP_BLADES,
  B_AND_T,
  SELF_TIMER,
  FLASH_CONTACT,
  WIND,
  INTERLOCK,
  COUNTER,
  LIGHT_SEALS,
  LENS,
  FOCUS,
  RANGEFINDER;

  /** Whether a camera with curtains has it: its aperture blades are those of the lens. */
  public boolean isOfCurtains() {
    return this != OIL_ON_BLADES && this != STOP_BLADES;
  }

  /** As files store them. */
  public static final StoredWords<CheckItem> WORDS =
      StoredWords.of(
          CheckItem.class,
          checkItem ->
              switch (checkItem) {
                case BLADES -> "blades";
                case OIL_ON_BLADES -> "oil-on-blades";
                case STOP_BLADES -> "stop-blades";
                case B_AND_T -> "b-and-t";
                case SELF_TIMER -> "self-timer";
                case FLASH_CONTACT -> "flash-contact";
                case WIND -> "wind";
                case INTERLOCK -> "interlock";
                case COUNTER -> "counter";
                case LIGHT_SEALS -> "light-seals";
                case LENS -> "lens";
                case FOCUS -> "focus";
                case RANGEFINDER -> "rangefinder";
              });
}
