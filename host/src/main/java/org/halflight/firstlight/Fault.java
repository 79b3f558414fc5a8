package org.halflight.firstlight;

/** What is wrong with an input, each with a sentence that says what to check. */
public enum Fault {
  /** Under 4.5 V. */
  SUPPLY_LOW,
  /** Over 5.25 V. */
  SUPPLY_HIGH,
  /** The reading of the sensor hardly moved, and is low. */
  NO_LIGHT,
  /** The reading of the sensor hardly moved, and is at the end of its scale. */
  ALWAYS_LIGHT,
  /** Light comes, but not enough for the level. */
  TOO_DIM,
  /** The sensor never got dark enough. */
  NOT_COVERED,
  /** The level is 0 in light and in the dark. */
  LEVEL_NEVER_ON,
  /** The level is 1 in light and in the dark. */
  LEVEL_ALWAYS_ON,
  /** The level is 1 in the dark and 0 in light. */
  LEVEL_INVERTED,
  /** The high level comes before the low one in rising light. */
  LEVELS_SWAPPED,
  /** Another sensor went dark in place of the one that was covered. */
  SENSORS_SWAPPED,
  /** The light of the right sensor moved, and the level of another one with it. */
  COMPARATORS_SWAPPED,
  /** The level of the sensor moved, and the light of another one with it. */
  LIGHT_SWAPPED,
  /** Both outer sensors went dark. */
  BOTH_COVERED,
  /** An input is on and stays on. */
  STUCK_ON,
  /** An input came on and did not go off. */
  STAYED_ON,
  /** No input changed. */
  NOTHING_CAME,
  /** Another input changed in place of this one. */
  ANOTHER_INPUT,
  /** Another input changes with this one. */
  JOINED,
  /** It changes without end. */
  CHATTERS,
  /** Light comes to the covered sensor without the LED. */
  LED_STRAY,
  /** The LED brings no light. */
  LED_DARK,
  /** The LED does not reach the low level. */
  LED_DIM,
  /** Its square pulses are not seen. */
  LED_SQUARE,
  /** Its ramped pulses are not seen. */
  LED_RAMPED,
  /** The low threshold comes back as the high one, and the high one as the low one. */
  THRESHOLDS_SWAPPED,
  /** A threshold does not follow what is set. */
  THRESHOLD_FIXED,
  /** A threshold follows, but is off. */
  THRESHOLD_OFF,
  /** The chip's reference is beyond its limits. */
  REFERENCE_OFF,
  /** The rig did not answer, or was lost. */
  NO_ANSWER,
  /** The light could not be set. */
  LIGHT_REFUSED,
  /** The firing has no exposure. */
  NOT_TIMED,
  /** The calibration was refused. */
  NOT_CALIBRATED
}
