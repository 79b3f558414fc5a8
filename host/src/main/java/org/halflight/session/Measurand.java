package org.halflight.session;

import org.halflight.stored.StoredWords;

/** What a verdict on a speed is about. */
public enum Measurand {
  /** The mean of the setting: where the shutter stands at this marking. */
  MEAN_OF_SETTING,
  /** One exposure: what nearly every single firing does. */
  ONE_EXPOSURE;

  /** As files store them, and as they are typed. */
  public static final StoredWords<Measurand> WORDS =
      StoredWords.of(
          Measurand.class,
          measurand ->
              switch (measurand) {
                case MEAN_OF_SETTING -> "mean-of-setting";
                case ONE_EXPOSURE -> "one-exposure";
              });
}
