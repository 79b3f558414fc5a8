package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

/**
 * The firing under way: a figure as soon as it has closed, a word where it stays open, and whether
 * it was the person who closed it.
 */
final class UnderwayWatch {
  /** Up to so many edges a provisional figure is looked for at each. */
  private static final int EDGES_LOOKED_AT_EACH = 64;

  private final RunProgress progress;
  private final FiringMeter meter;
  private OptionalLong closedByHandTicks = OptionalLong.empty();
  private boolean provisionalSaid;

  /** Edges of the centre sensor that the last look went by. */
  private int lookedAtEdges;

  UnderwayWatch(RunProgress progress, FiringMeter meter) {
    this.progress = progress;
    this.meter = meter;
  }

  /** A firing has settled; the next one is another. */
  void onSettled() {
    provisionalSaid = false;
    lookedAtEdges = 0;
  }

  /** Ticks start again. */
  void forgetTicks() {
    closedByHandTicks = OptionalLong.empty();
  }

  /** The person has just closed the shutter, or is about to. */
  void onClosedByHand(long ticks) {
    closedByHandTicks = OptionalLong.of(ticks);
  }

  /** Says what is known of a firing under way. */
  void publish(FiringGrouper grouper, TickRate rate, long nowTicks, List<SessionEvent> events) {
    if (grouper.isLight()) {
      grouper
          .openSinceTicks()
          .ifPresent(since -> publishOpen(rate.seconds(nowTicks - since), events));
    } else if (!provisionalSaid && isWorthALook(grouper.centreEdges())) {
      lookedAtEdges = grouper.centreEdges();
      if (meter.exposure(grouper.underway().orElseThrow()) instanceof Exposure.Timed timed) {
        publishProvisional(timed, events);
      }
    }
  }

  private void publishOpen(double seconds, List<SessionEvent> events) {
    if (seconds > openLongSeconds(progress.shown().flatMap(DialSetting::speed))) {
      events.add(new SessionEvent.StillOpen(seconds));
    }
  }

  private void publishProvisional(Exposure.Timed timed, List<SessionEvent> events) {
    provisionalSaid = true;
    OptionalDouble error =
        progress.wantedSeconds().stream()
            .mapToDouble(wanted -> Stops.between(timed.effectiveSeconds(), wanted))
            .findFirst();
    events.add(new SessionEvent.Provisional(timed, error));
  }

  /**
   * Whether the firing under way may have a figure that it had not before. In light that flickers
   * for long this is asked for ever more rarely, so that an edge costs no more than the one before.
   */
  private boolean isWorthALook(int edges) {
    return edges > lookedAtEdges && (edges <= EDGES_LOOKED_AT_EACH || edges >= 2 * lookedAtEdges);
  }

  /** A firing that is over, stuck open where the person closed it while it was under way. */
  Exposure asClosed(Firing firing, Exposure exposure) {
    boolean byHand =
        closedByHandTicks.isPresent()
            && closedByHandTicks.getAsLong() >= firing.firstTicks()
            && closedByHandTicks.getAsLong() <= firing.lastTicks();
    if (!byHand) {
      return exposure;
    }
    closedByHandTicks = OptionalLong.empty();
    return exposure instanceof Exposure.Timed timed ? timed.asStuckOpen() : exposure;
  }

  /** How long the shutter may be open before that is worth saying, in seconds. */
  static double openLongSeconds(Optional<MarkedSpeed> speed) {
    return Math.max(Session.OPEN_LONG_SECONDS, speed.map(s -> 3 * s.literalSeconds()).orElse(0.0));
  }
}
