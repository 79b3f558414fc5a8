package org.halflight.rig.practice;

import org.halflight.rig.RigCommand.SweepThreshold;
import org.halflight.signal.Channel;

/**
 * Where a sweep of a fine threshold code stands: up in steps of one code and back down, each code
 * looked at once a millisecond for 5 ms.
 */
final class ThresholdSweep {
  /** Reading threshold and light behind a switch. */
  static final int READING_TICKS = 12 * LightMeter.TICKS_PER_BLOCK;

  private static final int LOOKS_PER_CODE = 5;

  private final SweepThreshold wanted;
  private int step;
  private int look;
  private boolean tripped;
  private boolean told;

  ThresholdSweep(SweepThreshold wanted) {
    this.wanted = wanted;
  }

  /** How long a sweep takes. */
  static long ticks(SweepThreshold wanted) {
    return 2L * steps(wanted) * LOOKS_PER_CODE * LightMeter.TICKS_PER_BLOCK + 2L * READING_TICKS;
  }

  private static int steps(SweepThreshold wanted) {
    return wanted.toCode() - wanted.fromCode() + 1;
  }

  Channel channel() {
    return wanted.channel();
  }

  boolean isOver() {
    return step >= 2 * steps(wanted);
  }

  boolean isRising() {
    return step < steps(wanted);
  }

  boolean isNewCode() {
    return look == 0;
  }

  int fineCode() {
    return isRising() ? wanted.fromCode() + step : wanted.toCode() - (step - steps(wanted));
  }

  /**
   * Takes a look at the comparator.
   *
   * @return whether there is something to tell: it switched, or this way ends without
   */
  boolean tells(boolean wasOn, boolean isOn) {
    if (told) {
      return false;
    }
    // A threshold on its way up switches a comparator off.
    tripped = isRising() ? wasOn && !isOn : !wasOn && isOn;
    boolean lastOfTheWay = look == LOOKS_PER_CODE - 1 && (step + 1) % steps(wanted) == 0;
    told = tripped || lastOfTheWay;
    return told;
  }

  boolean hasTripped() {
    return tripped;
  }

  void next() {
    look++;
    if (look == LOOKS_PER_CODE) {
      look = 0;
      step++;
      if (step == steps(wanted)) {
        told = false;
        tripped = false;
      }
    }
  }
}
