package org.halflight.bench;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import org.halflight.calibration.ClockStamp;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.time.TickRate;

/**
 * Matches pings with their echoes: two stamps of both clocks for each. Not safe for use by several
 * threads.
 */
final class PingEchoes {
  private static final String PING = "p [0-9A-Fa-f]{4} [0-9A-Fa-f]{4}#.*";
  private static final int KEPT_MOST = 64;

  private final Map<Integer, Long> sentNanos = new HashMap<>();
  private final Set<Integer> unanswered = new HashSet<>();
  private final Consumer<ClockStamp> received;
  private final Consumer<ClockStamp> sent;

  /**
   * @param received takes stamps of the host's receiving side, which are never early
   * @param sent takes those of its sending side, which are never late
   */
  PingEchoes(Consumer<ClockStamp> received, Consumer<ClockStamp> sent) {
    this.received = received;
    this.sent = sent;
  }

  /** Takes note of a line to the rig, as it went out: {@code p SEQ TOKEN}. */
  void sent(BenchEvent.Sent line) {
    OptionalInt sequence = sequence(line);
    if (sequence.isEmpty()) {
      return;
    }
    if (sentNanos.size() > KEPT_MOST) {
      // A rig that answers nothing; what it missed it will not echo.
      sentNanos.clear();
      unanswered.clear();
    }
    unanswered.add(sequence.getAsInt());
    int token = Integer.parseInt(line.line().substring(7, 11), 16);
    // One that was sent twice may be echoed once: nobody knows for which.
    sentNanos.merge(token, line.hostNanos(), (before, again) -> null);
  }

  private static OptionalInt sequence(BenchEvent.Sent line) {
    return line.line().matches(PING)
        ? OptionalInt.of(Integer.parseInt(line.line().substring(2, 6), 16))
        : OptionalInt.empty();
  }

  /** Takes note of what a line of the rig said. */
  void onEvent(long hostNanos, RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.Echoed echo) {
      received.accept(new ClockStamp(rate.seconds(echo.sentTicks()), hostNanos * 1e-9));
      Long went = sentNanos.remove(echo.token());
      if (went != null) {
        sent.accept(new ClockStamp(rate.seconds(echo.receivedTicks()), went * 1e-9));
      }
    } else if (event instanceof RigEvent.Restarted) {
      sentNanos.clear();
      unanswered.clear();
    }
  }

  /** Whether this is the answer to a ping, which is nobody else's business. */
  boolean isAnswer(RigEvent event) {
    return event instanceof RigMessage.Answer answered
        && unanswered.remove(answered.commandSequence());
  }
}
