package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurtainCurve;
import org.halflight.exposure.Place;
import org.halflight.session.Phase;

/**
 * Where and when both curtains passed, as the pictures of a curtain shutter draw it: means of the
 * firings of a run at one speed.
 *
 * @param phase of the run
 * @param places the three, in the order of travel
 */
public record CurtainTrack(Phase phase, List<At> places) {
  /**
   * One place.
   *
   * @param millimetres from the middle of the frame, above 0 in the direction of travel
   * @param opensSeconds mean passing of the first curtain, from its passing of the start
   * @param coversSeconds mean passing of the second curtain, likewise
   * @param meanStops mean error against the marked time, above 0 for more exposure
   * @param lowStops the firings scatter from here
   * @param highStops to here
   * @param isCapped whether it stayed dark while another place saw light
   */
  public record At(
      Place place,
      double millimetres,
      OptionalDouble opensSeconds,
      OptionalDouble coversSeconds,
      OptionalDouble meanStops,
      double lowStops,
      double highStops,
      boolean isCapped) {}

  public CurtainTrack {
    places = List.copyOf(places);
    if (!places.stream().map(At::place).toList().equals(List.of(Place.values()))) {
      throw new IllegalArgumentException("a track has the three places in order");
    }
  }

  At at(Place place) {
    return places.get(place.index());
  }

  /** How far the outer places are from the middle of the frame, in mm. */
  double outerMillimetres() {
    return at(Place.END).millimetres();
  }

  /** The edge of the first curtain, where all three places saw it. */
  Optional<CurtainCurve> first() {
    return curve(At::opensSeconds);
  }

  /** The edge of the second curtain, likewise. */
  Optional<CurtainCurve> second() {
    return curve(At::coversSeconds);
  }

  private Optional<CurtainCurve> curve(Function<At, OptionalDouble> time) {
    List<Double> seconds = new ArrayList<>();
    places.forEach(at -> time.apply(at).ifPresent(seconds::add));
    return seconds.size() == Place.values().length
            && seconds.get(0) < seconds.get(1)
            && seconds.get(1) < seconds.get(2)
        ? Optional.of(
            new CurtainCurve(outerMillimetres(), seconds.get(0), seconds.get(1), seconds.get(2)))
        : Optional.empty();
  }

  /** Whether it is drawn in outline: only the run as found is. */
  boolean isOutlined() {
    return phase == Phase.AS_FOUND;
  }
}
