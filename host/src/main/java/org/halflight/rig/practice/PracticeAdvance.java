package org.halflight.rig.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.shuttermodel.ReleaseTiming;
import org.halflight.shuttermodel.Ringing;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/**
 * The film advance of the practice camera, its linkage to the release, and what is heard or touched
 * of it. All figures are invented.
 */
final class PracticeAdvance {
  /** The blades sound this long before first light. */
  static final double BLADES_SECONDS = 0.0004;

  private static final double BLADES_SCATTER_SECONDS = 0.00003;

  /** The advance is another piece of metal than the blades. */
  private static final Ringing ADVANCE = new Ringing(3100, 0.0028);

  private static final int BOUNCES = 3;
  private static final double BOUNCE_SECONDS = 0.0002;
  private static final double TOUCHES_SECONDS = 0.23;
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  /** A sensor does not come back in less: 10 us. */
  private static final long GAP_TICKS = RATE.ticks(10e-6);

  private double turnedMillis;
  private boolean isTouched;

  /** Turns the screw of the linkage: above 0 the advance frees earlier from now on. */
  void turn(double millis) {
    turnedMillis += millis;
  }

  /** Whether a contact at the advance is wired in place of click sensor and flash contact. */
  void touches(boolean byContact) {
    isTouched = byContact;
  }

  boolean isTouched() {
    return isTouched;
  }

  /**
   * What a release makes of it.
   *
   * @param lightTicks first light
   * @param frees whether the advance was wound and comes free
   */
  void release(
      PracticeWorld world,
      ReleaseTiming timing,
      long lightTicks,
      boolean frees,
      SeededDraws draws) {
    double millis = timing.clickBeforeLightMillis() + timing.scatterMillis() * draws.normal();
    long advance = lightTicks - RATE.ticks((millis + turnedMillis) * 1e-3);
    long blades = lightTicks - RATE.ticks(BLADES_SECONDS + BLADES_SCATTER_SECONDS * draws.normal());
    if (isTouched) {
      if (frees) {
        touch(world, advance);
      }
      return;
    }
    List<long[]> high = new ArrayList<>(pulses(Ringing.INVENTED, blades));
    if (frees) {
      high.addAll(pulses(ADVANCE, advance));
    }
    sound(world, high);
  }

  private static void touch(PracticeWorld world, long ticks) {
    for (int i = 0; i < BOUNCES; i++) {
      world.input(Channel.CONTACT, true, ticks + RATE.ticks(i * BOUNCE_SECONDS));
      world.input(Channel.CONTACT, false, ticks + RATE.ticks((i + 0.5) * BOUNCE_SECONDS));
    }
    world.input(Channel.CONTACT, true, ticks + RATE.ticks(BOUNCES * BOUNCE_SECONDS));
    world.input(Channel.CONTACT, false, ticks + RATE.ticks(TOUCHES_SECONDS));
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
  private static void sound(PracticeWorld world, List<long[]> pulses) {
    List<long[]> sorted =
        pulses.stream().sorted(Comparator.comparingLong(pulse -> pulse[0])).toList();
    long from = sorted.get(0)[0];
    long to = sorted.get(0)[1];
    for (long[] pulse : sorted) {
      if (pulse[0] > to + GAP_TICKS) {
        click(world, from, to);
        from = pulse[0];
        to = pulse[1];
      }
      to = Math.max(to, pulse[1]);
    }
    click(world, from, to);
  }

  private static void click(PracticeWorld world, long from, long to) {
    world.input(Channel.CLICK, true, from);
    world.input(Channel.CLICK, false, to);
  }
}
