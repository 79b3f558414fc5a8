package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;

/**
 * The light of one firing, over seconds from its first light.
 *
 * @param hole that the blades leave
 * @param opening of the blades
 * @param closing likewise, from open to shut
 * @param openingSeconds from shut to as far as they go
 * @param openSeconds how long they stand there
 * @param closingSeconds from there to shut
 * @param reach the place as far as which they go, 1 for fully open
 * @param fall of the light over the pupil, as the sensor sees it; film is not harmed by it
 * @param bumps light beside the main opening
 */
public record Light(
    Hole hole,
    Motion opening,
    Motion closing,
    double openingSeconds,
    double openSeconds,
    double closingSeconds,
    double reach,
    double fall,
    List<Bump> bumps) {
  /** Pieces into which each ramp is cut to be summed up. */
  private static final int PIECES = 2000;

  /** A triangle of light, of blades that spring open again. */
  public record Bump(double fromSeconds, double lengthSeconds, double peak) {
    double at(double seconds) {
      double part = (seconds - fromSeconds) / lengthSeconds;
      return part <= 0 || part >= 1 ? 0 : peak * (1 - Math.abs(2 * part - 1));
    }
  }

  /** Light crossing a level. */
  public record Passing(boolean rising, double seconds) {}

  public Light {
    bumps = List.copyOf(bumps);
  }

  /** Blades that open fully and shut once. */
  public static Light plain(
      Hole hole,
      Motion opening,
      Motion closing,
      double openingSeconds,
      double openSeconds,
      double closingSeconds,
      double fall) {
    return new Light(
        hole, opening, closing, openingSeconds, openSeconds, closingSeconds, 1, fall, List.of());
  }

  /** The same blades, open for another time. */
  public Light open(double seconds) {
    return new Light(
        hole, opening, closing, openingSeconds, seconds, closingSeconds, reach, fall, bumps);
  }

  /** The same with more light beside. */
  public Light with(Bump bump) {
    List<Bump> all = new ArrayList<>(bumps);
    all.add(bump);
    return new Light(
        hole, opening, closing, openingSeconds, openSeconds, closingSeconds, reach, fall, all);
  }

  /** When the main opening is over. */
  public double shutSeconds() {
    return openingSeconds + openSeconds + closingSeconds;
  }

  /** When the last light is over. */
  public double endSeconds() {
    return bumps.stream()
        .mapToDouble(bump -> bump.fromSeconds() + bump.lengthSeconds())
        .reduce(shutSeconds(), Math::max);
  }

  /** What the sensor sees, as a part of full light. */
  public double seen(double seconds) {
    double light = hole.seen(place(seconds), fall);
    for (Bump bump : bumps) {
      light = Math.max(light, bump.at(seconds));
    }
    return light;
  }

  /** Whether all of a time lies where the blades stand still, open. */
  public boolean standsOpen(double from, double to) {
    return from >= openingSeconds && to <= openingSeconds + openSeconds;
  }

  private double place(double seconds) {
    if (seconds <= 0 || seconds >= shutSeconds()) {
      return 0;
    }
    if (seconds < openingSeconds) {
      return reach * opening.way(seconds / openingSeconds);
    }
    double closes = seconds - openingSeconds - openSeconds;
    return closes <= 0 ? reach : reach * (1 - closing.way(closes / closingSeconds));
  }

  /**
   * All the light as seconds of full light, by summing it up in fine pieces: what film gets. The
   * sensor's view of the pupil has no part in it.
   */
  public double trueSeconds() {
    double sum = openSeconds * hole.area(reach);
    sum += openingSeconds * ramp(opening);
    sum += closingSeconds * (hole.area(reach) - backwards(closing));
    for (Bump bump : bumps) {
      sum += bump.peak() * bump.lengthSeconds() / 2;
    }
    return sum;
  }

  /** The mean light of a ramp that opens, by Simpson's rule over the way of the blades. */
  private double ramp(Motion motion) {
    // Over the way and not the time, so that the steep ends of a power are no trouble: the mean of
    // the light over time is the light at the end less the integral of time over light.
    double sum = 0;
    double before = 0;
    for (int i = 1; i <= PIECES; i++) {
      double way = (double) i / PIECES;
      double light = hole.area(reach * way);
      double middle = motion.time(way - 0.5 / PIECES);
      sum += (light - before) * middle;
      before = light;
    }
    return hole.area(reach) - sum;
  }

  /** Full light less the mean light of a ramp that closes. */
  private double backwards(Motion motion) {
    double sum = 0;
    double before = hole.area(reach);
    for (int i = 1; i <= PIECES; i++) {
      double way = (double) i / PIECES;
      double light = hole.area(reach * (1 - way));
      sum += (before - light) * motion.time(way - 0.5 / PIECES);
      before = light;
    }
    return hole.area(reach) - sum;
  }

  /** When the light that is seen rises through one level and falls through another, in order. */
  public List<Passing> passings(double risesThrough, double fallsThrough) {
    List<Passing> all = new ArrayList<>();
    double most = hole.seen(reach, fall);
    if (risesThrough < most && fallsThrough < most) {
      double up = hole.placeSeen(risesThrough, fall) / reach;
      double down = hole.placeSeen(fallsThrough, fall) / reach;
      all.add(new Passing(true, openingSeconds * opening.time(up)));
      all.add(
          new Passing(
              false, openingSeconds + openSeconds + closingSeconds * closing.time(1 - down)));
    }
    for (Bump bump : bumps) {
      if (risesThrough < bump.peak() && fallsThrough < bump.peak()) {
        double half = bump.lengthSeconds() / 2;
        all.add(new Passing(true, bump.fromSeconds() + half * risesThrough / bump.peak()));
        all.add(new Passing(false, bump.fromSeconds() + half * (2 - fallsThrough / bump.peak())));
      }
    }
    all.sort((one, other) -> Double.compare(one.seconds(), other.seconds()));
    return all;
  }
}
