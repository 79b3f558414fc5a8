package org.halflight.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.halflight.calibration.ClockStamp;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/**
 * Stamps of both clocks from pings: when the host sent and the rig had it, when the rig answered
 * and the host had that. Not safe for use by several threads.
 */
public final class PingStamps {
  private final Map<Integer, Long> sentNanos = new HashMap<>();
  private final List<ClockStamp> received = new ArrayList<>();
  private final List<ClockStamp> sent = new ArrayList<>();

  /** Takes note of a line to the rig, as it went out: {@code p SEQ TOKEN}. */
  public void sent(BenchEvent.Sent line) {
    if (line.line().matches("p [0-9A-Fa-f]{4} [0-9A-Fa-f]{4}#.*")) {
      sentNanos.put(Integer.parseInt(line.line().substring(7, 11), 16), line.hostNanos());
    }
  }

  /** Takes note of what a line of the rig said. */
  public void heard(long hostNanos, RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.Echoed echo) {
      add(received, new ClockStamp(rate.seconds(echo.sentTicks()), hostNanos * 1e-9));
      Long went = sentNanos.remove(echo.token());
      if (went != null) {
        add(sent, new ClockStamp(rate.seconds(echo.receivedTicks()), went * 1e-9));
      }
    } else if (event instanceof RigEvent.Restarted) {
      sentNanos.clear();
      received.clear();
      sent.clear();
    }
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
