package org.halflight.rig;

/**
 * Which tick rates a board can have: those of the clocks of docs/protocol.md, and as far off as a
 * ceramic resonator may be, should a firmware tell the rate that it was found to have. Any other
 * rate is a damaged line, whatever its CRC.
 */
final class ClockClass {
  private static final long[] NOMINAL_HZ = {16_000_000, 8_000_000};

  /** 0.5 % is 0.007 stop: nothing within it makes a time false. */
  private static final long PARTS = 200;

  private ClockClass() {}

  static boolean has(long ticksPerSecond) {
    for (long nominal : NOMINAL_HZ) {
      if (Math.abs(ticksPerSecond - nominal) <= nominal / PARTS) {
        return true;
      }
    }
    return false;
  }
}
