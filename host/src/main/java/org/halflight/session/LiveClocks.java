package org.halflight.session;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.profile.ClockRate;
import org.halflight.profile.RigProfile;

/** What the pings of a session say about the clocks of its rigs. */
final class LiveClocks {
  /** Rates that lie further apart than this times their joint uncertainty are not of one clock. */
  static final double APART = 2;

  /**
   * From the day of a profile to this one a ceramic resonator may have drifted by 10 ppm a degree,
   * of 5 degrees to either side (from memory), evenly spread.
   */
  static final double DRIFT_PPM = 50 / Math.sqrt(3);

  private final Map<String, ClockRate> found = new HashMap<>();
  private final Set<String> saidApart = new HashSet<>();

  void onClockHeld(SessionInput.ClockHeld held) {
    found.put(held.rigSerial(), held.rate());
  }

  /** Whoever goes on with a session later finds another room, and perhaps another day. */
  void forget() {
    found.clear();
    saidApart.clear();
  }

  Optional<ClockRate> of(String serial) {
    return Optional.ofNullable(found.get(serial));
  }

  /** What is to be said where a profile says otherwise; once, until they agree again. */
  Optional<SessionEvent.ClocksDisagree> news(Optional<RigProfile> profile) {
    if (profile.isEmpty() || profile.get().clock().isEmpty()) {
      return Optional.empty();
    }
    String serial = profile.get().rig().serial();
    ClockRate kept = profile.get().clock().get();
    Optional<ClockRate> live = of(serial).filter(now -> areApart(kept, now));
    if (live.isEmpty()) {
      saidApart.remove(serial);
      return Optional.empty();
    }
    return saidApart.add(serial)
        ? Optional.of(new SessionEvent.ClocksDisagree(kept, live.get()))
        : Optional.empty();
  }

  static boolean areApart(ClockRate kept, ClockRate live) {
    double joint =
        Math.hypot(
            Math.hypot(kept.standardUncertaintyPpm(), live.standardUncertaintyPpm()), DRIFT_PPM);
    return Math.abs(kept.fastPpm() - live.fastPpm()) > APART * joint;
  }
}
