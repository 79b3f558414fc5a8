package org.halflight.desk.view;

import java.util.Arrays;
import java.util.List;

/**
 * A sound, told from others by its rhythm; where it says which way something went, its pitch does
 * so too. All tones are soft and well below 2 kHz, where the click sensor of a rig does not listen.
 */
public enum Cue {
  /** A firing counts: one short. */
  COUNTED(SoundKind.COUNTED, "90"),
  /** A firing does not count: one long. */
  NOT_COUNTED(SoundKind.REJECTED, "340"),
  /** A speed is done: two short, one long. */
  SPEED_DONE(SoundKind.DONE, "80 -70 80 -70 260"),
  /** The run is done: long, short, long. */
  RUN_DONE(SoundKind.DONE, "240 -90 80 -90 400"),
  /** Something is asked: three even. */
  QUESTION(SoundKind.ASKED, "120 -120 120 -120 120"),
  /** An adjustment brought the speed closer: short, long, rising. */
  CLOSER(SoundKind.ADJUSTING, "80 -60 260", Cue.LOW_HERTZ, Cue.HIGH_HERTZ),
  /** It took the speed further off: long, short, falling. */
  FURTHER(SoundKind.ADJUSTING, "260 -60 80", Cue.HIGH_HERTZ, Cue.LOW_HERTZ),
  /** The speed is adjusted well enough: long and two short, level. */
  ENOUGH(SoundKind.ADJUSTING, "260 -80 80 -80 80"),
  /** The shutter hangs open: two short, again and again. */
  OPEN(SoundKind.OPEN, "80 -80 80");

  /** The tone of sounds that rise and fall not. */
  private static final double LEVEL_HERTZ = 587.33;

  private static final double LOW_HERTZ = 493.88;
  private static final double HIGH_HERTZ = 739.99;

  private final SoundKind kind;
  private final String millis;
  private final double firstHertz;
  private final double otherHertz;

  Cue(SoundKind kind, String millis) {
    this(kind, millis, Cue.LEVEL_HERTZ, Cue.LEVEL_HERTZ);
  }

  Cue(SoundKind kind, String millis, double firstHertz, double otherHertz) {
    this.kind = kind;
    this.millis = millis;
    this.firstHertz = firstHertz;
    this.otherHertz = otherHertz;
  }

  /** What it tells. */
  public SoundKind kind() {
    return kind;
  }

  /** Milliseconds of tone, and of silence below zero. */
  public List<Integer> rhythmMillis() {
    return Arrays.stream(millis.split(" ", -1)).map(Integer::valueOf).toList();
  }

  /**
   * The pitch of a tone.
   *
   * @param tone counts the tones of the rhythm from 0
   */
  public double hertz(int tone) {
    return tone == 0 ? firstHertz : otherHertz;
  }
}
