package org.halflight.light;

import java.util.OptionalDouble;

/**
 * The light with the shutter open and with it shut, from readings of which nobody says which is
 * which: light that jumps up by more than a factor of two came from a shutter that opened (or a
 * lamp that was switched on), light that jumps down as far from one that closed. A lamp that is
 * moved changes the light little by little, and the shutter stays as it was.
 *
 * <p>A reading counts once the next one is like it, the first at once: in between the blades were
 * on their way. Blades take a reading or two for that; a jump that takes longer is a hand that
 * moves the lamp. Not safe for use by several threads.
 */
public final class OpenAndShut {
  /** A jump is by so much and more. Our own limit. */
  private static final double JUMP = 2;

  /** And by so many counts: a bench in the dark wanders. */
  private static final double JUMP_COUNTS = 30;

  private static final double ALIKE_SHARE = 0.03;
  private static final double ALIKE_COUNTS = 3;

  /** So many readings may lie between: the blades take milliseconds. Our own limit. */
  private static final int JUMP_READINGS = 3;

  private OptionalDouble last = OptionalDouble.empty();
  private OptionalDouble still = OptionalDouble.empty();
  private OptionalDouble open = OptionalDouble.empty();
  private OptionalDouble shut = OptionalDouble.empty();
  private boolean isOpen;
  private int sinceStill;

  /** Takes the next reading, in counts. */
  public void add(double counts) {
    boolean alike =
        last.isEmpty()
            || Math.abs(counts - last.getAsDouble())
                <= Math.max(ALIKE_COUNTS, ALIKE_SHARE * counts);
    last = OptionalDouble.of(counts);
    if (alike) {
      stands(counts);
      sinceStill = 0;
    } else {
      sinceStill++;
    }
  }

  private void stands(double counts) {
    double before = still.orElse(counts);
    boolean quick = sinceStill <= JUMP_READINGS;
    if (quick && counts > JUMP * before + JUMP_COUNTS) {
      shut = OptionalDouble.of(before);
      isOpen = true;
    } else if (quick && before > JUMP * counts + JUMP_COUNTS) {
      open = OptionalDouble.of(before);
      isOpen = false;
    }
    still = OptionalDouble.of(counts);
    if (open.isPresent() || shut.isPresent()) {
      if (isOpen) {
        open = still;
      } else {
        shut = still;
      }
    }
  }

  /**
   * Light with the shutter shut as a share of that with it open; empty where not both are known.
   */
  public OptionalDouble strayShare() {
    return open.isPresent() && shut.isPresent()
        ? OptionalDouble.of(shut.getAsDouble() / open.getAsDouble())
        : OptionalDouble.empty();
  }

  /** Whether the shutter was seen to open, or to close; and is shut now. */
  public boolean isShut() {
    return !isOpen && shut.isPresent();
  }
}
