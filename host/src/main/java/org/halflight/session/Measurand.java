package org.halflight.session;

import org.halflight.stored.StoredWords;

/** What a verdict on a speed is about. */
public enum Measurand {
  /**
   * The usual exposure of the setting, its median: where the shutter stands at this marking. It is
   * decided by the mean of the firings and by how many of them lie beyond a limit. Its name and
   * word are of the time when it was the mean.
   */
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
