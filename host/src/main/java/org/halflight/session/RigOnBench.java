package org.halflight.session;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Which start of which rig the ticks are of, up to when it was heard, and the gaps in that: a
 * pulled cable, a computer that slept.
 */
final class RigOnBench {
  /**
   * A rig says something every 2^22 ticks of its 16 MHz clock at least; silence for three times
   * that is a gap, in seconds (docs/protocol.md).
   */
  static final double SILENCE_SECONDS = 3 * 0.262144;

  private String serial = "";
  private long bootCount;
  private TickRate rate = BoardTraits.USUAL.rate();
  private OptionalLong latestTicks = OptionalLong.empty();
  private boolean lost;

  String serial() {
    return serial;
  }

  long bootCount() {
    return bootCount;
  }

  TickRate rate() {
    return rate;
  }

  /** The latest that was heard of it; 0 before anything was. */
  long latestTicks() {
    return latestTicks.orElse(0);
  }

  /** No rig was there yet. */
  boolean isFirst() {
    return serial.isEmpty();
  }

  boolean isSameStart(SessionInput.RigIs rig) {
    return isSame(rig) && rig.bootCount() == bootCount;
  }

  boolean isSame(SessionInput.RigIs rig) {
    return rig.serial().equals(serial);
  }

  /** Another start, of this rig or another; ticks of before mean nothing beside those that come. */
  void onRigIdentified(SessionInput.RigIs rig, List<SessionEvent> events) {
    if (!isFirst()) {
      events.add(new SessionEvent.LinkGap(OptionalDouble.empty()));
    }
    lost = false;
    serial = rig.serial();
    bootCount = rig.bootCount();
    rate = rig.board().rate();
  }

  void forgetTicks() {
    latestTicks = OptionalLong.empty();
  }

  void onTicks(long ticks, List<SessionEvent> events) {
    if (latestTicks.isPresent()) {
      double gap = rate.seconds(ticks - latestTicks.getAsLong());
      if (gap > SILENCE_SECONDS || (lost && gap > 0)) {
        events.add(new SessionEvent.LinkGap(OptionalDouble.of(gap)));
      }
    }
    lost = false;
    latestTicks = OptionalLong.of(Math.max(ticks, latestTicks.orElse(ticks)));
  }

  void onLinkLost() {
    lost = true;
  }

  FiringKey keyOf(Firing firing) {
    return keyOf(firing.firstTicks());
  }

  /** The key of the firing of this rig that begins at a time. */
  FiringKey keyOf(long firstTicks) {
    return new FiringKey(serial, bootCount, firstTicks);
  }
}
