package org.halflight.rig.practice;

import org.halflight.shuttermodel.TurningDisc;
import org.halflight.time.TickRate;

/** A slotted disc on a motor before the light of the practice rig. */
final class PracticeDisc {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final PracticeWorld world;

  /** How often the motor was switched on or off: what was planned before is void. */
  private int switched;

  PracticeDisc(PracticeWorld world) {
    this.world = world;
  }

  /** Switches the motor on. */
  void turn(TurningDisc disc) {
    switched++;
    plan(disc, 0, world.start(), 0, switched);
  }

  /** Switches it off, which ends with the turn that goes on. */
  void stop() {
    switched++;
  }

  private void plan(
      TurningDisc disc, int turn, long beginTicks, double secondsSinceBegin, int run) {
    long ticks = beginTicks + RATE.ticks(secondsSinceBegin);
    world.later(
        ticks,
        () -> {
          if (run == switched) {
            world.shineOnAndOn(ticks, disc.turn(turn, 1));
            plan(disc, turn + 1, beginTicks, secondsSinceBegin + disc.turnSeconds(turn), run);
          }
        });
  }
}
