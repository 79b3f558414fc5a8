package org.halflight.exposure;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.halflight.speeds.Stops;

/**
 * How both curtains of a focal-plane shutter passed the frame in one firing. Times are seconds from
 * time zero: half light at the start sensor by the first curtain, or at the next place where that
 * stayed dark.
 *
 * @param zeroTicks time zero in ticks of the board, so that contact and release can be held against
 *     it
 * @param geometry where the sensors were taken to be
 * @param direction which outer sensor is at the start
 * @param places the three, in the order of travel
 * @param first the first curtain, where all three places saw it
 * @param second the second curtain, likewise
 * @param differencePlusMinusSeconds of {@link #travelDifferenceSeconds}, 19 times in 20
 * @param slitMillimetres the slit between both curtains as it passed the centre: exposure there
 *     times the speed of the second curtain. More than the frame where that was wholly open
 * @param windowOpensSeconds when the first curtain clears the edge of the frame at the end
 * @param windowShutsSeconds when the second curtain leaves the edge at the start
 * @param windowPlusMinusSeconds of the window from the one to the other, 19 times in 20, with what
 *     no sensor sees in the outer parts
 * @param openingSeconds from first to full light at the centre, as long as slit and blur are wide
 * @param closingSeconds from full to last light there
 * @param unlit places whose sensor has not been seen to work, so that dark says nothing
 * @param notes what to know about it
 */
public record CurtainTravel(
    long zeroTicks,
    CurtainGeometry geometry,
    Direction direction,
    List<PlacePassing> places,
    Optional<CurtainRun> first,
    Optional<CurtainRun> second,
    double differencePlusMinusSeconds,
    OptionalDouble slitMillimetres,
    OptionalDouble windowOpensSeconds,
    OptionalDouble windowShutsSeconds,
    double windowPlusMinusSeconds,
    ByLaw openingSeconds,
    ByLaw closingSeconds,
    Set<Place> unlit,
    Set<CurtainNote> notes)
    implements Travel {
  public CurtainTravel {
    places = List.copyOf(places);
    unlit = Set.copyOf(unlit);
    notes = Set.copyOf(notes);
    if (!places.stream().map(PlacePassing::place).toList().equals(List.of(Place.values()))) {
      throw new IllegalArgumentException("a travel has the three places in order");
    }
  }

  /** One of the three places. */
  public PlacePassing at(Place place) {
    return places.get(place.index());
  }

  /**
   * Travel time of the second curtain less that of the first, outer sensor to outer sensor, without
   * extrapolation: below 0 where the second is the quicker.
   */
  public OptionalDouble travelDifferenceSeconds() {
    return first.isPresent() && second.isPresent()
        ? OptionalDouble.of(second.get().outerSeconds() - first.get().outerSeconds())
        : OptionalDouble.empty();
  }

  /**
   * Exposure at the end over that at the start, in stops: above 0 the end is brighter. Empty where
   * one of them got nothing, since darkness has no stops.
   */
  public OptionalDouble slopeStops() {
    OptionalDouble start = at(Place.START).effectiveSeconds();
    OptionalDouble end = at(Place.END).effectiveSeconds();
    return start.orElse(0) > 0 && end.orElse(0) > 0
        ? OptionalDouble.of(Stops.between(end.getAsDouble(), start.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** The greatest of the three exposures over the least, in stops; empty below three with light. */
  public OptionalDouble rangeStops() {
    double[] seconds =
        places.stream()
            .filter(each -> each.effectiveSeconds().orElse(0) > 0)
            .mapToDouble(each -> each.effectiveSeconds().getAsDouble())
            .sorted()
            .toArray();
    return seconds.length == Place.values().length
        ? OptionalDouble.of(Stops.between(seconds[seconds.length - 1], seconds[0]))
        : OptionalDouble.empty();
  }

  /**
   * Window: the second curtain leaves the edge at the start less the first clears the edge at the
   * end, in seconds. Below 0 the frame is never open as a whole, which is normal with a slit.
   */
  public OptionalDouble windowSeconds() {
    return windowOpensSeconds.isPresent() && windowShutsSeconds.isPresent()
        ? OptionalDouble.of(windowShutsSeconds.getAsDouble() - windowOpensSeconds.getAsDouble())
        : OptionalDouble.empty();
  }

  /** Places that stayed dark while another saw light, and whose sensor is known to work. */
  public Set<Place> capped() {
    Set<Place> dark = EnumSet.noneOf(Place.class);
    if (!places.stream().allMatch(PlacePassing::isDark)) {
      places.stream().filter(PlacePassing::isDark).forEach(each -> dark.add(each.place()));
    }
    dark.removeAll(unlit);
    return dark;
  }

  /** How the edge of the first curtain went, where all three places saw it. */
  public Optional<CurtainCurve> firstCurve() {
    return first.map(run -> curve(PlacePassing::opensSeconds));
  }

  /** How the edge of the second curtain went, likewise. */
  public Optional<CurtainCurve> secondCurve() {
    return second.map(run -> curve(PlacePassing::coversSeconds));
  }

  private CurtainCurve curve(Function<PlacePassing, OptionalDouble> time) {
    return new CurtainCurve(
        at(Place.END).millimetres(),
        time.apply(at(Place.START)).orElseThrow(),
        time.apply(at(Place.CENTRE)).orElseThrow(),
        time.apply(at(Place.END)).orElseThrow());
  }
}
