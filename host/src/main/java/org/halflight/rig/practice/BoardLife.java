package org.halflight.rig.practice;

import java.util.function.BooleanSupplier;

/**
 * The time of one life of the practice board, from its start until its power goes. Times are those
 * of the world, but where they are said to be the board's own.
 */
final class BoardLife {
  private static final long TICKS_48 = (1L << 48) - 1;

  private final PracticeWorld world;
  private final long startTicks;
  private final BooleanSupplier hasPower;

  BoardLife(PracticeWorld world, long startTicks, BooleanSupplier hasPower) {
    this.world = world;
    this.startTicks = startTicks;
    this.hasPower = hasPower;
  }

  PracticeWorld world() {
    return world;
  }

  long startTicks() {
    return startTicks;
  }

  long now() {
    return world.now();
  }

  /** Ticks since the start of the board. */
  long age() {
    return now() - startTicks;
  }

  /** The board's own ticks at a time, with the 48 bits that the wire has. */
  long ticks48(long ticks) {
    return (ticks - startTicks) & TICKS_48;
  }

  /** The low half of the board's own ticks at a time. */
  int low32(long ticks) {
    return (int) (ticks - startTicks);
  }

  /** Plans something that does not happen once the power is gone. */
  void later(long ticks, Runnable action) {
    world.later(
        ticks,
        () -> {
          if (hasPower.getAsBoolean()) {
            action.run();
          }
        });
  }
}
