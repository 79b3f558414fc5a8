package org.halflight.validation.invented;

/** What is wrong with an invented curtain shutter. */
public enum CurtainFault {
  NOTHING("sound"),
  FIRST_SLOW("first curtain slow"),
  SECOND_SLOW("second curtain slow"),
  BOTH_SLOW("both curtains slow"),
  LATE_LATCH("second curtain's latch late"),
  SLIT_WRONG("slit set too narrow"),
  FIRST_DRAGS("first curtain drags near the end"),
  SECOND_DRAGS("second curtain drags near the end"),
  FIRST_BOUNCES("first curtain bounces"),
  SECOND_BOUNCES("second curtain bounces"),
  FIRST_BRAKED_EARLY("first curtain braked too early"),
  SECOND_BRAKED_EARLY("second curtain braked too early"),
  FIRST_STICKS("first curtain sticks at the start");

  private final String words;

  CurtainFault(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
