package org.halflight.session;

import org.halflight.signal.Firing;

/** Which openings belong to setting the light: those that began while it was being set. */
final class LightHold {
  private static final long NEVER = Long.MIN_VALUE;

  private boolean underWay;
  private long untilTicks = NEVER;

  void onLightBeingSet(boolean begins, long nowTicks) {
    if (underWay && !begins) {
      untilTicks = nowTicks;
    }
    underWay = begins;
  }

  /** Whether a firing is such an opening; the shutter may be let go after the light was set. */
  boolean holds(Firing firing) {
    return holds(firing.firstTicks());
  }

  /** The same of a firing that began at a time. */
  boolean holds(long firstTicks) {
    return underWay || firstTicks <= untilTicks;
  }

  /** Ticks of before mean nothing any more. */
  void forget() {
    untilTicks = NEVER;
  }
}
