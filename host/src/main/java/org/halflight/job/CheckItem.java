package org.halflight.job;

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
  RANGEFINDER
}
