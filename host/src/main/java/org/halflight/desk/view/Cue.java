package org.halflight.desk.view;

import java.util.Arrays;
import java.util.List;

/**
 * A sound, told from others by its rhythm. All are one soft tone well below 2 kHz, where the click
 * sensor of a rig does not listen.
 */
public enum Cue {
  /** A firing counts: one short. */
  COUNTED("90"),
  /** A firing does not count as a time: one long. */
  NOT_COUNTED("340"),
  /** A speed is done: two short, one long. */
  SPEED_DONE("80 -70 80 -70 260"),
  /** The run is done: long, short, long. */
  RUN_DONE("240 -90 80 -90 400"),
  /** Something is asked: three even. */
  QUESTION("120 -120 120 -120 120");

  /** The tone of every sound, in hertz. */
  public static final double HERTZ = 587.33;

  private final String millis;

  Cue(String millis) {
    this.millis = millis;
  }

  /** Milliseconds of tone, and of silence below zero. */
  public List<Integer> rhythmMillis() {
    return Arrays.stream(millis.split(" ", -1)).map(Integer::valueOf).toList();
  }
}
