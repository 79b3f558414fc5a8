package org.halflight.campaign;

import java.lang.management.ManagementFactory;

/** What this thread has asked for in memory: steps that can be counted without a clock. */
final class Allocated {
  private static final com.sun.management.ThreadMXBean THREADS =
      (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();

  private Allocated() {}

  /** What is held of the heap after the garbage is gone. */
  static long kept() {
    Runtime runtime = Runtime.getRuntime();
    System.gc();
    System.gc();
    return runtime.totalMemory() - runtime.freeMemory();
  }

  /** Bytes so far. */
  static long bytes() {
    return THREADS.getCurrentThreadAllocatedBytes();
  }
}
