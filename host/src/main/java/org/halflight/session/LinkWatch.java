package org.halflight.session;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.time.TickRate;

/** Names the gaps in what was heard of the rig: a pulled cable, a computer that slept. */
final class LinkWatch {
  /**
   * A rig says something every 2^22 ticks of its 16 MHz clock at least; silence for three times
   * that is a gap, in seconds (docs/protocol.md).
   */
  static final double SILENCE_SECONDS = 3 * 0.262144;

  private OptionalLong lastTicks = OptionalLong.empty();
  private boolean lost;

  void onLost() {
    lost = true;
  }

  /** Ticks start anew; the start itself is told by what follows. */
  void forget() {
    lastTicks = OptionalLong.empty();
  }

  /** Another start of the rig, or another rig: ticks say nothing about the time between. */
  void onRigRestarted(boolean wasHeardBefore, List<SessionEvent> news) {
    lastTicks = OptionalLong.empty();
    if (wasHeardBefore) {
      news.add(new SessionEvent.LinkGap(OptionalDouble.empty()));
    }
    lost = false;
  }

  void onTicks(long ticks, TickRate rate, List<SessionEvent> news) {
    if (lastTicks.isPresent()) {
      double gap = rate.seconds(ticks - lastTicks.getAsLong());
      if (gap > SILENCE_SECONDS || (lost && gap > 0)) {
        news.add(new SessionEvent.LinkGap(OptionalDouble.of(gap)));
      }
    }
    lost = false;
    lastTicks = OptionalLong.of(Math.max(ticks, lastTicks.orElse(ticks)));
  }
}
