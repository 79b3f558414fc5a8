package org.halflight.extratest;

import org.halflight.session.WindState;
import org.halflight.stored.StoredWords;

/** The state in which a press left the camera. */
public enum PressOutcome {
  /** No picture, and the wind is locked: nothing has happened. */
  NEITHER,
  /** A picture, and the wind turns. */
  BOTH,
  /** The wind turns, and no picture was taken. */
  ADVANCE_ONLY,
  /** A picture was taken, and the wind is locked. */
  SHUTTER_ONLY;

  /** As tables and the record spell them. */
  public static final StoredWords<PressOutcome> WORDS =
      StoredWords.of(
          PressOutcome.class,
          outcome ->
              switch (outcome) {
                case NEITHER -> "neither";
                case BOTH -> "both";
                case ADVANCE_ONLY -> "advance-only";
                case SHUTTER_ONLY -> "shutter-only";
              });

  /** What light and the try of the film advance amount to. */
  public static PressOutcome of(boolean tripped, WindState wind) {
    if (wind == WindState.TURNS) {
      return tripped ? BOTH : ADVANCE_ONLY;
    }
    return tripped ? SHUTTER_ONLY : NEITHER;
  }
}
