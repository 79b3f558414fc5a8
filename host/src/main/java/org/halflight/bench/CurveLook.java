package org.halflight.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigCommand.CurveMode;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.FiringResult;
import org.halflight.session.ReboundOfRun;
import org.halflight.session.Session;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;

/**
 * Asks the rig for other light curves than the usual one of the centre.
 *
 * <p>A long one where nobody has looked for a rebound yet: between two firings at a fast speed and
 * without a word to the person, at two speeds of a run, so that the two can be held against each
 * other. A rig that does not know long curves is asked once.
 *
 * <p>That of an outer sensor when the person wants it, which goes first. For one thread.
 */
final class CurveLook {
  /** Speeds of a run that are looked at. */
  static final int SPEEDS = 2;

  /** A curve may be lost, or its firing not count; then it is tried again, but not for ever. */
  static final int TRIES_MOST = 3;

  private record Place(int run, MarkedSpeed speed) {}

  private final Map<Place, Integer> tries = new HashMap<>();
  private Optional<Place> now = Optional.empty();
  private boolean asked;
  private boolean cannot;

  /** The outer sensor whose curve the person wants of the next firing. */
  private Optional<Channel> outer = Optional.empty();

  private boolean outerAsked;
  private OptionalInt sequence = OptionalInt.empty();

  /** What was looked at, as of so many firings and curves. */
  private Set<MarkedSpeed> lookedAt = Set.of();

  private int runLookedAt;
  private int firingsLookedAt = -1;
  private boolean curveCame;

  /** Whether this is the one who gives such a command. */
  static boolean isOne(RigCommand command) {
    return command instanceof RigCommand.TakeCurves;
  }

  /** Takes note of a line to the rig, as it went out. */
  void sent(BenchEvent.Sent line) {
    if (LineCodec.parse(line.line()) instanceof ParsedLine.Command out
        && out.command() instanceof RigCommand.TakeCurves curves
        && curves.mode().isForNextOnly()) {
      sequence = OptionalInt.of(out.sequence());
    }
  }

  /** The person wants the curve of an outer sensor at the next firing, or of none any more. */
  void want(Optional<Channel> sensor) {
    outer = sensor;
    outerAsked = false;
    asked = sensor.isEmpty() && asked;
  }

  /** The outer sensor whose curve is still to come. */
  Optional<Channel> wanted() {
    return outer;
  }

  /** Hears what the rig says, whoever it works for. */
  void onEvent(RigEvent said) {
    if (said instanceof RigMessage.Answer answered
        && sequence.isPresent()
        && sequence.getAsInt() == answered.commandSequence()) {
      sequence = OptionalInt.empty();
      boolean refused = answered.result() != RigMessage.Result.DONE;
      if (outerAsked) {
        outer = refused ? Optional.empty() : outer;
        outerAsked = !refused;
      } else {
        cannot = refused;
        asked &= !cannot;
      }
    } else if (said instanceof RigEvent.CurveSeen seen) {
      curveCame = true;
      if (!seen.light().isOfCentre()) {
        outer = Optional.empty();
        outerAsked = false;
      }
      if (seen.light().isLong()) {
        asked = false;
        now.filter(place -> !seen.light().cutOff())
            .ifPresent(place -> tries.merge(place, 1, Integer::sum));
      }
    } else if (said instanceof RigMessage.Greeting) {
      cannot = false;
      forget();
    } else if (said instanceof RigEvent.Restarted) {
      forget();
    }
  }

  /** The command was lost again and again: the rig is left alone until it greets again. */
  void unanswered() {
    forget();
    cannot = true;
  }

  /** The rig may have forgotten what it was asked for, or never heard it. */
  void forget() {
    asked = false;
    outerAsked = false;
    sequence = OptionalInt.empty();
  }

  /** A beat came, and nothing is under way: gives the command to send, if any. */
  Optional<RigCommand> next(Session session) {
    if (outer.isPresent()) {
      boolean now = !outerAsked;
      outerAsked = true;
      return now
          ? outer.map(
              sensor ->
                  new RigCommand.TakeCurves(
                      sensor == Channel.OUTER_A
                          ? CurveMode.NEXT_OF_OUTER_A
                          : CurveMode.NEXT_OF_OUTER_B))
          : Optional.empty();
    }
    now =
        session
            .shown()
            .filter(ReboundOfRun::isAskedFor)
            .filter(speed -> session.run() > 0 && session.light().isPresent())
            .map(speed -> new Place(session.run(), speed));
    boolean wanted = !cannot && now.filter(place -> isWanted(place, session)).isPresent();
    if (wanted == asked) {
      return Optional.empty();
    }
    asked = wanted;
    return Optional.of(new RigCommand.TakeCurves(wanted ? CurveMode.NEXT_ONE_LONG : CurveMode.ON));
  }

  private boolean isWanted(Place place, Session session) {
    List<FiringResult> all = session.results();
    if (curveCame || firingsLookedAt != all.size() || runLookedAt != place.run()) {
      curveCame = false;
      firingsLookedAt = all.size();
      runLookedAt = place.run();
      lookedAt =
          ReboundOfRun.of(
                  all.stream()
                      .filter(f -> f.run() == place.run())
                      .filter(CurveLook::isLong)
                      .toList())
              .secondsAt()
              .keySet();
    }
    return !lookedAt.contains(place.speed())
        && lookedAt.size() < SPEEDS
        && tries.getOrDefault(place, 0) < TRIES_MOST;
  }

  private static boolean isLong(FiringResult firing) {
    return firing.sampledLight().filter(SampledLight::isLong).isPresent();
  }
}
