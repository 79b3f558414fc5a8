package org.halflight.light;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.light.Aim.Lamp;
import org.halflight.light.Aim.Move;
import org.halflight.light.Aim.State;
import org.halflight.signal.Channel;

/**
 * Takes what the light meter reads and says how the light is aimed. Knows no rig and no clock: the
 * time is that of the readings. Not safe for use by several threads.
 */
public final class AimTrail {
  private static final double SECOND = 1;

  /** A sensor that was not read for so long is not read any more. */
  private static final double GONE_SECONDS = 2;

  /** The lamp was judged at another light, once that has changed by this share. Our own limit. */
  private static final double OTHER_LIGHT_SHARE = 0.1;

  private final Map<Channel, Deque<MeterReading>> trails = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> since = new EnumMap<>(Channel.class);
  private final OpenAndShut shutter = new OpenAndShut();
  private Optional<LampLight> lamp = Optional.empty();
  private double lampCounts;
  private double newest;

  /** Takes a reading; those of one sensor in their order. */
  public void add(MeterReading reading) {
    Deque<MeterReading> trail =
        trails.computeIfAbsent(reading.sensor(), none -> new ArrayDeque<>());
    since.putIfAbsent(reading.sensor(), reading.seconds());
    trail.addLast(reading);
    newest = reading.seconds();
    while (trail.getFirst().seconds() < reading.seconds() - SECOND) {
      trail.removeFirst();
    }
    if (reading.sensor() == Channel.CENTRE_LOW) {
      shutter.add(reading.counts());
      if (Math.abs(reading.counts() - lampCounts) > OTHER_LIGHT_SHARE * lampCounts) {
        lamp = Optional.empty();
      }
    }
  }

  /** The lamp was judged in the light of now. */
  public void judged(LampLight finding) {
    lamp = Optional.of(finding);
    lampCounts = needle(Channel.CENTRE_LOW).map(Needle::counts).orElse(0.0);
  }

  /** Whether the centre has light enough, still enough for the lamp to be judged. */
  public boolean isStill() {
    return needle(Channel.CENTRE_LOW)
        .filter(its -> its.counts() >= Aim.LEAST_LIGHT_COUNTS && its.wholeSecond())
        .filter(its -> !its.clips() && its.wander() < OTHER_LIGHT_SHARE)
        .isPresent();
  }

  /** How the light is aimed now. */
  public Aim aim() {
    List<Needle> needles = new ArrayList<>();
    for (Channel sensor : trails.keySet()) {
      needle(sensor).ifPresent(needles::add);
    }
    Map<Lamp, State> lamps = new EnumMap<>(Lamp.class);
    Optional<Needle> centre = needle(Channel.CENTRE_LOW);
    lamps.put(Lamp.STRAY, stray(centre));
    lamps.put(Lamp.FLICKER, flicker());
    lamps.put(Lamp.STEADY, steady(centre));
    OptionalDouble share = shutter.strayShare();
    Aim seen = new Aim(needles, Move.WAIT, lamps, share, lamp);
    return new Aim(
        needles, centre.map(its -> move(its, seen)).orElse(Move.WAIT), lamps, share, lamp);
  }

  /** Where a sensor is read no more, it has no needle. */
  private Optional<Needle> needle(Channel sensor) {
    Deque<MeterReading> trail = trails.get(sensor);
    if (trail == null || trail.getLast().seconds() < newest - GONE_SECONDS) {
      return Optional.empty();
    }
    MeterReading now = trail.getLast();
    double least = trail.stream().mapToDouble(MeterReading::counts).min().orElseThrow();
    double most = trail.stream().mapToDouble(MeterReading::counts).max().orElseThrow();
    return Optional.of(
        new Needle(
            sensor,
            now.counts(),
            least,
            most,
            now.counts() > Aim.SATURATED_COUNTS || now.most() > FlickerJudge.SATURATED_COUNTS,
            now.seconds() - since.getOrDefault(sensor, now.seconds()) >= SECOND));
  }

  private State stray(Optional<Needle> centre) {
    OptionalDouble share = shutter.strayShare();
    if (share.isPresent()) {
      return share.getAsDouble() > Aim.GREATEST_DARK_SHARE ? State.BAD : State.GOOD;
    }
    // Dark beside any light that is wanted.
    return centre.filter(AimTrail::isDark).isPresent() ? State.GOOD : State.UNKNOWN;
  }

  private static boolean isDark(Needle centre) {
    return centre.counts() <= Aim.GREATEST_DARK_SHARE * Aim.WANTED_FROM_COUNTS;
  }

  private State flicker() {
    return lamp.map(
            its ->
                its instanceof LampLight.MainsFlicker || its instanceof LampLight.FastRipple
                    ? State.BAD
                    : its instanceof LampLight.Unknown ? State.UNKNOWN : State.GOOD)
        .orElse(State.UNKNOWN);
  }

  private State steady(Optional<Needle> centre) {
    if (centre.filter(Needle::wholeSecond).filter(its -> !isDark(its)).isEmpty()) {
      return State.UNKNOWN;
    }
    Needle its = centre.get();
    boolean wanders =
        its.most() - its.least() > Math.max(Aim.UNSTEADY_COUNTS, Aim.UNSTEADY_SHARE * its.counts());
    return wanders || lamp.filter(LampLight.Unsteady.class::isInstance).isPresent()
        ? State.BAD
        : State.GOOD;
  }

  private Move move(Needle centre, Aim seen) {
    if (centre.clips()) {
      return Move.FURTHER;
    }
    if (seen.of(Lamp.STRAY) == State.BAD) {
      return Move.SHADE;
    }
    if (isDark(centre) || shutter.isShut()) {
      return Move.OPEN;
    }
    if (centre.counts() < Aim.LEAST_LIGHT_COUNTS) {
      return Move.CLOSER;
    }
    if (centre.counts() < Aim.WANTED_FROM_COUNTS) {
      return Move.A_LITTLE_CLOSER;
    }
    if (centre.counts() > Aim.WANTED_TO_COUNTS) {
      return Move.A_LITTLE_FURTHER;
    }
    if (seen.of(Lamp.FLICKER) == State.BAD) {
      return Move.OTHER_LAMP;
    }
    if (seen.of(Lamp.STEADY) == State.BAD) {
      return Move.HOLD_STILL;
    }
    return moveOthers(centre, seen);
  }

  private static Move moveOthers(Needle centre, Aim seen) {
    if (seen.of(Lamp.STRAY) == State.UNKNOWN) {
      return Move.SHUT;
    }
    if (seen.needle(Channel.OUTER_A).filter(its -> isOff(its, centre)).isPresent()) {
      return Move.LIGHT_OUTER_A;
    }
    if (seen.needle(Channel.OUTER_B).filter(its -> isOff(its, centre)).isPresent()) {
      return Move.LIGHT_OUTER_B;
    }
    return seen.of(Lamp.FLICKER) == State.UNKNOWN || seen.of(Lamp.STEADY) == State.UNKNOWN
        ? Move.LOOK_ON
        : Move.SET;
  }

  private static boolean isOff(Needle outer, Needle centre) {
    double share = outer.counts() / centre.counts();
    return share < Aim.OUTER_SHARE || share > 1 / Aim.OUTER_SHARE;
  }
}
