package org.halflight.rig.practice;

/** What can be wired wrongly on the practice rig. */
public enum WiringFault {
  /** Nothing. */
  NONE,
  /** The two levels of the centre are on each other's pin. */
  LEVELS_SWAPPED,
  /** The inputs of the comparator of the low level are exchanged. */
  LOW_INVERTED,
  /** The photodiode of the centre is the wrong way round: it stays dark. */
  CENTRE_DEAD,
  /** The comparator of the low level is not connected. */
  LOW_OPEN,
  /** The outer sensors are in each other's place. */
  OUTERS_SWAPPED,
  /** The flash contact is shorted. */
  CONTACT_SHORTED,
  /** The release is not connected. */
  RELEASE_OPEN,
  /** Release and knob contact are on each other's pin. */
  RELEASE_ON_KNOB,
  /** The reference LED is the wrong way round. */
  LED_DEAD,
  /** The low threshold does not follow. */
  LOW_THRESHOLD_FIXED
}
