package org.halflight.session;

import org.halflight.stored.StoredWords;

/** What became of a release. Each has exactly one. */
public enum Outcome {
  /** Opened, closed, and was timed. */
  TIMED,
  /** Opened and closed, but the leaves never opened fully: only bounds of the time are known. */
  NEVER_FULLY_OPEN,
  /** Opened and did not close by itself, or was not seen to close: a lower limit is known. */
  STUCK_OPEN,
  /** The release was pressed and no light came. */
  DID_NOT_OPEN,
  /** Opened twice: light came further from the main opening than one exposure lasts. */
  DOUBLE,
  /** B or T: opened, held and closed as it should. */
  OPENS_HOLDS_CLOSES,
  /** B or T: closed before it should. */
  DID_NOT_HOLD,
  /** Light as it comes when this shutter is cocked; no release. */
  LIGHT_WHILE_COCKING,
  /** Held open by the person to set the light; no release to be judged. */
  HELD_FOR_LIGHT,
  /** A sound or a contact only, or a release behind the lens cap. */
  NOT_A_SHUTTER_EVENT,
  /** The record of the edges is damaged, so nothing is claimed about the shutter. */
  UNUSABLE;

  /** As files store them. */
  public static final StoredWords<Outcome> WORDS =
      StoredWords.of(
          Outcome.class,
          outcome ->
              switch (outcome) {
                case TIMED -> "timed";
                case NEVER_FULLY_OPEN -> "never-fully-open";
                case STUCK_OPEN -> "stuck-open";
                case DID_NOT_OPEN -> "did-not-open";
                case DOUBLE -> "double";
                case OPENS_HOLDS_CLOSES -> "opens-holds-closes";
                case DID_NOT_HOLD -> "did-not-hold";
                case LIGHT_WHILE_COCKING -> "light-while-cocking";
                case HELD_FOR_LIGHT -> "held-for-light";
                case NOT_A_SHUTTER_EVENT -> "not-a-shutter-event";
                case UNUSABLE -> "unusable";
              });

  /** Whether it is a release that says how the shutter is (and not the rig, the room or a cap). */
  public boolean isOfTheShutter() {
    return this != LIGHT_WHILE_COCKING
        && this != HELD_FOR_LIGHT
        && this != NOT_A_SHUTTER_EVENT
        && this != UNUSABLE;
  }
}
