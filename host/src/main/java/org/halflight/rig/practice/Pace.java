package org.halflight.rig.practice;

import java.util.function.LongSupplier;

/** How virtual time goes on. */
sealed interface Pace {
  /** As fast as it is read, as far as something was asked for. */
  record Unpaced() implements Pace {}

  /**
   * With a clock in nanoseconds that never runs back.
   *
   * @param startNanos what it showed at virtual time 0
   */
  record Paced(LongSupplier nanos, long startNanos) implements Pace {
    /** Virtual time now, in ticks of 62.5 ns. */
    long ticks() {
      long passed = nanos.getAsLong() - startNanos;
      // 16 ticks in 1000 ns, in two steps so that no lifetime of a machine overflows.
      return passed / 1000 * 16 + passed % 1000 * 16 / 1000;
    }
  }
}
