package org.halflight.session;

import java.util.List;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/** Which start of which rig the ticks are of, and up to when it was heard. */
final class RigOnBench {
  private final LinkWatch link = new LinkWatch();
  private String serial = "";
  private long bootCount;
  private TickRate rate = BoardTraits.USUAL.rate();
  private long latestTicks;

  String serial() {
    return serial;
  }

  long bootCount() {
    return bootCount;
  }

  TickRate rate() {
    return rate;
  }

  /** The latest that was heard of it. */
  long latestTicks() {
    return latestTicks;
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
    link.onRigRestarted(!isFirst(), events);
    serial = rig.serial();
    bootCount = rig.bootCount();
    rate = rig.board().rate();
  }

  void forgetTicks() {
    latestTicks = 0;
    link.forget();
  }

  void onTicks(long ticks, List<SessionEvent> events) {
    link.onTicks(ticks, rate, events);
    latestTicks = Math.max(latestTicks, ticks);
  }

  void onLinkLost() {
    link.onLost();
  }

  FiringKey keyOf(Firing firing) {
    return new FiringKey(serial, bootCount, firing.firstTicks());
  }
}
