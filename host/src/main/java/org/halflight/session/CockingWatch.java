package org.halflight.session;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

/** Learns how light comes through while cocking, and knows it again. */
final class CockingWatch {
  /**
   * Without a release input, light that could as well be the shown speed within this many stops is
   * taken as a firing: in doubt nothing is kept from the results.
   */
  static final double FIRING_STOPS = 0.5;

  private final Deque<CockingPattern.Stroke> strokes = new ArrayDeque<>();
  private Optional<CockingPattern> pattern = Optional.empty();
  private boolean learning;

  Optional<CockingPattern> pattern() {
    return pattern;
  }

  boolean isLearning() {
    return learning;
  }

  /** Another camera: nothing is known. */
  void forget() {
    learning = false;
    strokes.clear();
    pattern = Optional.empty();
  }

  void begin() {
    learning = true;
    strokes.clear();
  }

  void end(List<SessionEvent> events) {
    if (learning) {
      learning = false;
      events.add(new SessionEvent.CockingNotKnown(strokes.size()));
    }
  }

  /**
   * Whether the light of a firing came by cocking. While learning, all light without a release did.
   *
   * @param released whether the release was pressed for it
   * @param releaseIsWired whether the release was ever seen on this rig
   * @param wantedSeconds time of the shown speed; empty where none is shown
   */
  boolean claims(
      Firing firing,
      Exposure exposure,
      TickRate rate,
      boolean released,
      boolean releaseIsWired,
      Optional<Double> wantedSeconds,
      List<SessionEvent> events) {
    Optional<CockingPattern.Stroke> stroke = CockingPattern.Stroke.of(firing, rate);
    if (released || stroke.isEmpty()) {
      return false;
    }
    if (learning) {
      learn(stroke.get(), events);
      return true;
    }
    return pattern.filter(known -> known.matches(stroke.get())).isPresent()
        && (releaseIsWired || !couldBeTheSpeed(exposure, wantedSeconds));
  }

  private void learn(CockingPattern.Stroke stroke, List<SessionEvent> events) {
    strokes.add(stroke);
    if (strokes.size() > CockingPattern.STROKES) {
      strokes.remove();
    }
    events.add(new SessionEvent.CockingStroke(strokes.size(), CockingPattern.STROKES));
    if (strokes.size() == CockingPattern.STROKES) {
      CockingPattern found = new CockingPattern(List.copyOf(strokes));
      // Strokes that are not alike go on being learnt, the oldest given up for each new one.
      if (found.isAlike()) {
        pattern = Optional.of(found);
        learning = false;
        events.add(new SessionEvent.CockingKnown(found));
      }
    }
  }

  private static boolean couldBeTheSpeed(Exposure exposure, Optional<Double> wantedSeconds) {
    return exposure instanceof Exposure.Timed timed
        && wantedSeconds
            .filter(wanted -> Math.abs(Stops.between(ownSeconds(timed), wanted)) <= FIRING_STOPS)
            .isPresent();
  }

  /** What the blades themselves let through: light past a flap is none of theirs. */
  private static double ownSeconds(Exposure.Timed timed) {
    return timed.flags().contains(Exposure.Flag.FLAP_LIGHT)
        ? timed.mainSeconds()
        : timed.effectiveSeconds();
  }
}
