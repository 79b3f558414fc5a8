package org.halflight.shuttermodel;

import java.util.OptionalDouble;

/**
 * A finger on the release button of an invented camera. It presses evenly, faster and faster,
 * slower and slower, or rests on the way; it jumps where the load drops; and it stops a reaction
 * time after what it waits for. All figures are invented, but the reaction of 0.2 s, which is
 * common knowledge.
 *
 * @param millimetresPerSecond mean speed on the way down
 * @param way how the speed changes
 * @param stops whether it stops at the first thing that gives way; else it presses to the end
 */
public record Finger(double millimetresPerSecond, Way way, boolean stops) {
  /** How the speed changes on the way down. */
  public enum Way {
    EVEN,
    FASTER,
    SLOWER,
    /** Rests for a while, somewhere on the way. */
    RESTS
  }

  private static final double STEP_SECONDS = 0.0005;
  private static final double REACTION_SECONDS = 0.2;
  private static final double REACTION_SCATTER_SECONDS = 0.02;

  /** As a spring gives way under the finger. */
  private static final double JUMP_MILLIMETRES = 0.1;

  private static final double JUMP_SECONDS = 0.005;

  /** How much faster or slower than its mean speed a press begins or ends. */
  private static final double CHANGE = 0.6;

  private static final double HOLDS_SECONDS = 0.15;
  private static final double BACK_SECONDS = 0.06;

  /**
   * What a press came to, in seconds from its begin.
   *
   * @param unlocksSeconds when the advance unlocked; empty where it did not, or was unlocked before
   * @param tripsSeconds when the shutter tripped; empty likewise
   * @param deepestMillimetres how far the button went
   * @param letGoSeconds when the finger began to let go
   * @param endSeconds when the button was at rest again
   */
  public record Press(
      OptionalDouble unlocksSeconds,
      OptionalDouble tripsSeconds,
      double deepestMillimetres,
      double letGoSeconds,
      double endSeconds) {}

  public Finger {
    if (!(millimetresPerSecond > 0) || !Double.isFinite(millimetresPerSecond)) {
      throw new IllegalArgumentException("a finger moves: " + millimetresPerSecond);
    }
  }

  /** Presses for over a second and stops at the first thing that gives way. */
  public static Finger stopping(SeededDraws draws) {
    return new Finger(1 + 0.4 * draws.uniform(), anyWay(draws), true);
  }

  /** Presses slowly, to the end. */
  public static Finger slow(SeededDraws draws) {
    return new Finger(1 + 3 * draws.uniform(), anyWay(draws), false);
  }

  /** A jab. */
  public static Finger quick(SeededDraws draws) {
    return new Finger(30 + 40 * draws.uniform(), Way.EVEN, false);
  }

  private static Way anyWay(SeededDraws draws) {
    return Way.values()[draws.upTo(Way.values().length - 1)];
  }

  /**
   * Presses the button once.
   *
   * @param isLocked whether the advance is locked
   * @param isCocked whether the shutter is cocked
   */
  public Press press(ButtonLinkage linkage, boolean isLocked, boolean isCocked, SeededDraws draws) {
    double reaction = REACTION_SECONDS + REACTION_SCATTER_SECONDS * draws.normal();
    double restsAt = ButtonLinkage.END_MILLIMETRES * (0.2 + 0.6 * draws.uniform());
    double rest = way == Way.RESTS ? 0.3 + 0.7 * draws.uniform() : 0;
    OptionalDouble unlocks = OptionalDouble.empty();
    OptionalDouble trips = OptionalDouble.empty();
    double at = 0;
    double seconds = 0;
    double jumping = 0;
    double stop = Double.POSITIVE_INFINITY;
    while (at < ButtonLinkage.END_MILLIMETRES && seconds < stop) {
      seconds += STEP_SECONDS;
      if (rest > 0 && at >= restsAt) {
        rest -= STEP_SECONDS;
      } else {
        at += speed(at) * STEP_SECONDS;
      }
      if (jumping > 0) {
        jumping -= STEP_SECONDS;
        at += JUMP_MILLIMETRES * STEP_SECONDS / JUMP_SECONDS;
      }
      boolean unlocksNow = isLocked && unlocks.isEmpty() && at >= linkage.unlocksMillimetres();
      boolean tripsNow = isCocked && trips.isEmpty() && at >= linkage.tripsMillimetres();
      unlocks = unlocksNow ? OptionalDouble.of(seconds) : unlocks;
      trips = tripsNow ? OptionalDouble.of(seconds) : trips;
      if (unlocksNow || tripsNow) {
        jumping = JUMP_SECONDS;
        stop = stops ? Math.min(stop, seconds + reaction) : stop;
      }
    }
    double letGo = stops ? seconds : seconds + HOLDS_SECONDS;
    return new Press(unlocks, trips, at, letGo, letGo + BACK_SECONDS);
  }

  private double speed(double at) {
    double left = 1 - 2 * at / ButtonLinkage.END_MILLIMETRES;
    return millimetresPerSecond
        * switch (way) {
          case EVEN, RESTS -> 1;
          case FASTER -> 1 - CHANGE * left;
          case SLOWER -> 1 + CHANGE * Math.max(-1, left);
        };
  }
}
