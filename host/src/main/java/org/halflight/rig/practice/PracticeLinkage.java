package org.halflight.rig.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.Finger;
import org.halflight.shuttermodel.Ringing;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/**
 * The film advance of the practice camera and its linkage to the release button: what is locked,
 * and what is heard and touched of it. All figures are invented.
 */
final class PracticeLinkage {
  /** From the shutter tripping to first light. */
  static final double TRIP_TO_LIGHT_SECONDS = 0.004;

  /** A finger in an ordinary release. */
  static final double USUAL_MILLIMETRES_A_SECOND = 28;

  /** The blades sound this long before first light. */
  private static final double BLADES_SECONDS = 0.0004;

  private static final double BLADES_SCATTER_SECONDS = 0.00003;

  /** The advance is another piece of metal than the blades. */
  private static final Ringing ADVANCE = new Ringing(3100, 0.0028);

  /** So many of the pawls that are lifted by a slow finger make no sound. */
  private static final double SILENT_SHARE = 0.25;

  /** A button that springs back sounds this long after it was let go. */
  private static final double BACK_SECONDS = 0.01;

  private static final int TAP_CLICKS = 2;
  private static final double TAP_SECONDS = 0.03;

  /** The knob gives way this long after its pawl. */
  private static final double KNOB_SECONDS = 0.002;

  private static final int BOUNCES = 2;
  private static final double BOUNCE_SECONDS = 0.0004;

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** A sensor does not come back in less: 10 us. */
  private static final long GAP_TICKS = RATE.ticks(10e-6);

  private final PracticeWorld world;
  private ButtonLinkage linkage = ButtonLinkage.ONE_CLICK;
  private boolean hasKnobContact;
  private boolean isLocked = true;
  private boolean isKnobAway;

  PracticeLinkage(PracticeWorld world) {
    this.world = world;
  }

  ButtonLinkage linkage() {
    return linkage;
  }

  /** The linkage is adjusted. */
  void is(ButtonLinkage adjusted) {
    linkage = adjusted;
  }

  /** A contact at the wind knob is fitted or taken off. */
  void fitKnobContact(boolean fitted) {
    if (fitted != hasKnobContact) {
      hasKnobContact = fitted;
      isKnobAway = false;
      world.input(Channel.KNOB, fitted, world.start());
    }
  }

  boolean isLocked() {
    return isLocked;
  }

  /** The film is wound on, which locks the advance. */
  void lock(long ticks) {
    isLocked = true;
    if (isKnobAway) {
      isKnobAway = false;
      world.input(Channel.KNOB, true, ticks);
    }
  }

  /** An ordinary release, by a quick and even finger: the advance unlocks, and it is heard. */
  void release(long lightTicks, SeededDraws draws) {
    double ahead = linkage.tripsMillimetres() - linkage.unlocksMillimetres();
    long unlock =
        lightTicks - RATE.ticks(TRIP_TO_LIGHT_SECONDS + ahead / USUAL_MILLIMETRES_A_SECOND);
    List<long[]> high = new ArrayList<>(blades(lightTicks, draws));
    if (isLocked) {
      high.addAll(pulses(ADVANCE, unlock));
      unlock(unlock);
    }
    sound(high);
  }

  /**
   * What is heard and touched of a press that a person was asked for.
   *
   * @param lightTicks first light, where the shutter trips; else 0 or less
   * @param isSlow whether a pawl may be lifted without a sound
   */
  void press(
      Finger.Press press, long pressTicks, long lightTicks, boolean isSlow, SeededDraws draws) {
    List<long[]> high = new ArrayList<>();
    boolean silent = isSlow && draws.uniform() < SILENT_SHARE;
    press
        .unlocksSeconds()
        .ifPresent(
            seconds -> {
              long ticks = pressTicks + RATE.ticks(seconds);
              if (!silent) {
                high.addAll(pulses(ADVANCE, ticks));
              }
              unlock(ticks);
            });
    if (lightTicks > 0) {
      high.addAll(blades(lightTicks, draws));
    }
    high.addAll(
        pulses(Ringing.INVENTED, pressTicks + RATE.ticks(press.letGoSeconds() + BACK_SECONDS)));
    sound(high);
    // A knob that has moved on lets its pawl fall beside the notch.
    isLocked |= !hasKnobContact && !linkage.staysUnlocked(press.deepestMillimetres());
  }

  /** Somebody taps the camera. */
  void tap(long ticks) {
    List<long[]> high = new ArrayList<>();
    for (int i = 0; i < TAP_CLICKS; i++) {
      high.addAll(pulses(Ringing.INVENTED, ticks + RATE.ticks(i * TAP_SECONDS)));
    }
    sound(high);
  }

  private void unlock(long ticks) {
    isLocked = false;
    if (!hasKnobContact) {
      return;
    }
    isKnobAway = true;
    long moves = ticks + RATE.ticks(KNOB_SECONDS);
    for (int i = 0; i < BOUNCES; i++) {
      world.input(Channel.KNOB, false, moves + RATE.ticks(i * BOUNCE_SECONDS));
      world.input(Channel.KNOB, true, moves + RATE.ticks((i + 0.5) * BOUNCE_SECONDS));
    }
    world.input(Channel.KNOB, false, moves + RATE.ticks(BOUNCES * BOUNCE_SECONDS));
  }

  private static List<long[]> blades(long lightTicks, SeededDraws draws) {
    double before = BLADES_SECONDS + BLADES_SCATTER_SECONDS * draws.normal();
    return pulses(Ringing.INVENTED, lightTicks - RATE.ticks(before));
  }

  private static List<long[]> pulses(Ringing ringing, long onset) {
    return ringing.pulses().stream()
        .map(
            pulse ->
                new long[] {
                  onset + RATE.ticks(pulse.fromSeconds()), onset + RATE.ticks(pulse.toSeconds())
                })
        .toList();
  }

  /**
   * Where two sounds ring at once the sensor has one output: it is high while either is, and does
   * not come back between two that follow at once.
   */
  private void sound(List<long[]> pulses) {
    List<long[]> sorted =
        pulses.stream().sorted(Comparator.comparingLong(pulse -> pulse[0])).toList();
    long from = sorted.get(0)[0];
    long to = sorted.get(0)[1];
    for (long[] pulse : sorted) {
      if (pulse[0] > to + GAP_TICKS) {
        click(from, to);
        from = pulse[0];
        to = pulse[1];
      }
      to = Math.max(to, pulse[1]);
    }
    click(from, to);
  }

  private void click(long from, long to) {
    world.input(Channel.CLICK, true, from);
    world.input(Channel.CLICK, false, to);
  }
}
