package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import org.halflight.calibration.ClockStamp;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/**
 * Stamps of both clocks from pings: when the host sent and the rig had it, when the rig answered
 * and the host had that. Not safe for use by several threads.
 */
public final class PingStamps {
  private final List<ClockStamp> received = new ArrayList<>();
  private final List<ClockStamp> sent = new ArrayList<>();
  private final PingEchoes echoes =
      new PingEchoes(stamp -> add(received, stamp), stamp -> add(sent, stamp));

  /** Takes note of a line to the rig, as it went out: {@code p SEQ TOKEN}. */
  public void sent(BenchEvent.Sent line) {
    echoes.sent(line);
  }

  /** Takes note of what a line of the rig said. */
  public void onEvent(long hostNanos, RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.Restarted) {
      received.clear();
      sent.clear();
    }
    echoes.onEvent(hostNanos, event, rate);
  }

  private static void add(List<ClockStamp> stamps, ClockStamp stamp) {
    // An echo that came twice brings nothing new.
    if (stamps.isEmpty() || stamp.boardSeconds() > stamps.get(stamps.size() - 1).boardSeconds()) {
      stamps.add(stamp);
    }
  }

  /** Stamps of the host's receiving side, which are never early. */
  public List<ClockStamp> received() {
    return List.copyOf(received);
  }

  /** Stamps of its sending side, which are never late. */
  public List<ClockStamp> sent() {
    return List.copyOf(sent);
  }
}
