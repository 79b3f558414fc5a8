package org.halflight.session;

/** What a verdict on a speed is about. */
public enum Measurand {
  /** The mean of the setting: where the shutter stands at this marking. */
  MEAN_OF_SETTING,
  /** One exposure: what nearly every single firing does. */
  ONE_EXPOSURE
}
