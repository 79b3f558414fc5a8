package org.halflight.session;

import java.util.List;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Whether B and T hold: B for as long as the release is held, T until it is pressed once more.
 * Where the release is not wired, staying open for half a second has to do, which no timed opening
 * by mistake of the faster speeds does.
 */
final class HoldRule {
  /** Without a wired release, open for this long counts as held, in seconds. */
  static final double HELD_SECONDS = 0.5;

  /** The contact of the release and the blades need not agree better than this, in seconds. */
  static final double SLACK_SECONDS = 0.005;

  private HoldRule() {}

  static Outcome of(UntimedTest check, Firing firing, Exposure.Timed timed, TickRate rate) {
    List<Edge> release = firing.of(Channel.RELEASE);
    long opens = timed.crossings().lowRiseTicks();
    long closes = timed.crossings().lowFallTicks();
    long slack = rate.ticks(SLACK_SECONDS);
    boolean wired = release.stream().anyMatch(e -> e.high() && e.ticks() <= opens + slack);
    boolean held;
    if (!wired) {
      held = timed.widthLowSeconds() >= HELD_SECONDS;
    } else if (check == UntimedTest.B) {
      // Let go before it closed, and not only after.
      held =
          release.stream()
              .anyMatch(e -> !e.high() && e.ticks() > opens - slack && e.ticks() <= closes + slack);
    } else {
      held =
          release.stream()
              .anyMatch(e -> e.high() && e.ticks() > opens + slack && e.ticks() <= closes + slack);
    }
    return held ? Outcome.OPENS_HOLDS_CLOSES : Outcome.DID_NOT_HOLD;
  }
}
