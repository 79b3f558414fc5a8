package org.halflight.extratest;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.BladeTravel;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.OpeningLaw;
import org.halflight.exposure.Place;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.FiringResult;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;

/**
 * The flash contact in one firing. A flash lights at the first touch, so all times are those of the
 * first closing, in seconds from first crossing of the low level; before it they are negative.
 *
 * @param how what the contact did
 * @param closingSeconds the first closing
 * @param durationSeconds from first closing to last opening; 0 where it was not seen to open
 * @param bounces times that it opened again before it closed for its longest stretch
 * @param areaLinear when the blades began and ended to be fully open if the hole's area grows
 *     evenly; of curtains the window at its longest, as far as it is uncertain
 * @param radiusLinear likewise if its radius does; of curtains the window at its shortest
 * @param curtains whether it is held against the window of two curtains
 */
public record ContactShot(
    How how,
    double closingSeconds,
    double durationSeconds,
    int bounces,
    Optional<FullyOpen> areaLinear,
    Optional<FullyOpen> radiusLinear,
    boolean curtains) {
  /**
   * A flash needs this long before the second curtain starts, in seconds: common practice, no
   * source.
   */
  public static final double FLASH_SECONDS = 1e-3;

  /** More openings than this in one firing are no bounce of a closing contact. Our choice. */
  public static final int MOST_BOUNCES = 30;

  /** A contact that still closes so long after the light is no bounce either. Our choice. */
  public static final double CHATTER_SECONDS = 0.5;

  /** What the contact did. */
  public enum How {
    /** Closed, and opened again or not. */
    CLOSED,
    /** Did not close. */
    NEVER,
    /** Was closed before the firing, so that no flash would have been lit by it. */
    ALWAYS_CLOSED,
    /** Opened and closed without end. */
    CHATTERS
  }

  /** Whether a flash that is lit by the contact finds the blades fully open; best to worst. */
  public enum Flash {
    /** No closing, or no times of the blades, to judge by. */
    UNKNOWN,
    /** By both opening laws. */
    WHILE_OPEN,
    /** The blades are never fully open. */
    NEVER_OPEN,
    /** The two opening laws disagree: too close to call. */
    TOO_CLOSE,
    /** Before they are, by both. */
    TOO_EARLY,
    /** After they began to close, by both. */
    TOO_LATE
  }

  /**
   * The blades under one opening law, or the window of curtains at its longest or shortest, in
   * seconds from the first crossing of the low level.
   *
   * @param firstLight start of opening
   * @param from fully open
   * @param to start of closing
   * @param bulbAim what the delay of flash bulbs is counted to: blades four fifths open, or the
   *     slit of curtains at the centre
   */
  public record FullyOpen(double firstLight, double from, double to, double bulbAim) {}

  /** The contact in a firing; empty where there was no light to hold it against. */
  static Optional<ContactShot> of(FiringResult result) {
    long zero;
    if (result.exposure() instanceof Exposure.Timed timed) {
      zero = timed.crossings().lowRiseTicks();
    } else if (result.exposure() instanceof Exposure.NeverFullyOpen never) {
      zero = never.startTicks();
    } else {
      return Optional.empty();
    }
    Optional<CurtainTravel> travel =
        result.exposure() instanceof Exposure.Timed timed
                && timed.travel() instanceof CurtainTravel its
            ? Optional.of(its)
            : Optional.empty();
    Optional<FullyOpen> area =
        travel.isPresent()
            ? window(result, travel.get(), zero, 1)
            : blades(result, OpeningLaw.AREA_LINEAR);
    Optional<FullyOpen> radius =
        travel.isPresent()
            ? window(result, travel.get(), zero, -1)
            : blades(result, OpeningLaw.RADIUS_LINEAR);
    Pulses closed = Pulses.of(result.firing(), Channel.CONTACT);
    List<Edge> edges = result.firing().of(Channel.CONTACT);
    int closings = (int) edges.stream().filter(Edge::high).count();
    boolean chatters = closings - 1 > MOST_BOUNCES || isClosingLongAfter(result, edges);
    if (edges.isEmpty() || (closed.startsHigh() && !chatters)) {
      How how = edges.isEmpty() ? How.NEVER : How.ALWAYS_CLOSED;
      return Optional.of(new ContactShot(how, 0, 0, 0, area, radius, travel.isPresent()));
    }
    long first = edges.get(closed.startsHigh() ? 1 : 0).ticks();
    long last = edges.get(edges.size() - 1).ticks();
    return Optional.of(
        new ContactShot(
            chatters ? How.CHATTERS : How.CLOSED,
            result.realRate().seconds(first - zero),
            closed.stillHighSince().isPresent() ? 0 : result.realRate().seconds(last - first),
            chatters ? closings - 1 : bounces(closed),
            area,
            radius,
            travel.isPresent()));
  }

  private static boolean isClosingLongAfter(FiringResult result, List<Edge> contact) {
    long dark =
        result.firing().edges().stream()
            .filter(edge -> edge.channel().isLight())
            .mapToLong(Edge::ticks)
            .max()
            .orElse(Long.MAX_VALUE);
    return contact.stream()
        .filter(Edge::high)
        .anyMatch(edge -> result.realRate().seconds(edge.ticks() - dark) > CHATTER_SECONDS);
  }

  /** Openings before the longest stretch; one that lasts to the end is the longest. */
  private static int bounces(Pulses closed) {
    if (closed.stillHighSince().isPresent()) {
      return closed.pulses().size();
    }
    int longest = 0;
    for (int i = 1; i < closed.pulses().size(); i++) {
      Pulse pulse = closed.pulses().get(i);
      if (pulse.ticks() > closed.pulses().get(longest).ticks()) {
        longest = i;
      }
    }
    return longest;
  }

  /**
   * @param side 1 for the window at its longest, -1 at its shortest
   */
  private static Optional<FullyOpen> window(
      FiringResult result, CurtainTravel travel, long zero, int side) {
    PlacePassing centre = travel.at(Place.CENTRE);
    if (travel.windowSeconds().isEmpty()
        || centre.opensSeconds().isEmpty()
        || travel.first().isEmpty()
        || travel.second().isEmpty()) {
      return Optional.empty();
    }
    double shift = result.realRate().seconds(travel.zeroTicks() - zero);
    // Half of what the window may be off belongs to either end. How long it lasts adds to that and
    // says nothing of how sure an end is, so the travel of each curtain bounds it.
    double doubt = travel.windowPlusMinusSeconds();
    double opensDoubt = side * Math.min(doubt, travel.first().get().plusMinusSeconds()) / 2;
    double shutsDoubt = side * Math.min(doubt, travel.second().get().plusMinusSeconds()) / 2;
    double covers = centre.coversSeconds().orElse(centre.opensSeconds().getAsDouble());
    return Optional.of(
        new FullyOpen(
            shift,
            shift + travel.windowOpensSeconds().getAsDouble() - opensDoubt,
            shift + travel.windowShutsSeconds().getAsDouble() + shutsDoubt,
            shift + (centre.opensSeconds().getAsDouble() + covers) / 2));
  }

  private static Optional<FullyOpen> blades(FiringResult result, OpeningLaw law) {
    if (!(result.exposure() instanceof Exposure.Timed timed) || timed.blades().isEmpty()) {
      return Optional.empty();
    }
    BladeTravel blades = timed.blades().get();
    LevelPair levels = result.levels().orElse(LevelPair.GAUSS);
    double toLow = law.timeTo(levels.low());
    double opening = blades.openingSeconds().under(law);
    double closing = blades.closingSeconds().under(law);
    return Optional.of(
        new FullyOpen(
            -toLow * opening,
            (1 - toLow) * opening,
            timed.widthLowSeconds() - (1 - toLow) * closing,
            (law.timeTo(0.8) - toLow) * opening));
  }

  /** Whether it closed and its first closing has a time. */
  public boolean hasClosing() {
    return how == How.CLOSED || how == How.CHATTERS;
  }

  /**
   * From closing to four fifths open, or to the slit at the centre, in seconds, in the middle of
   * the two laws.
   */
  public Optional<Double> delaySeconds() {
    return !hasClosing() || areaLinear.isEmpty() || radiusLinear.isEmpty()
        ? Optional.empty()
        : Optional.of(
            (areaLinear.get().bulbAim() + radiusLinear.get().bulbAim()) / 2 - closingSeconds);
  }

  /** What an electronic flash would find. Its own duration is not counted. */
  public Flash flash() {
    if (!hasClosing()) {
      return Flash.UNKNOWN;
    }
    if (areaLinear.isEmpty() || radiusLinear.isEmpty()) {
      return Flash.NEVER_OPEN;
    }
    Flash one = flash(areaLinear.get());
    return one == flash(radiusLinear.get()) ? one : Flash.TOO_CLOSE;
  }

  private Flash flash(FullyOpen open) {
    if (open.to() <= open.from()) {
      return Flash.NEVER_OPEN;
    }
    double last = open.to() - (curtains ? FLASH_SECONDS : 0);
    return closingSeconds < open.from()
        ? Flash.TOO_EARLY
        : closingSeconds > last ? Flash.TOO_LATE : Flash.WHILE_OPEN;
  }
}
