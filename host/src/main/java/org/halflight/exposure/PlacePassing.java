package org.halflight.exposure;

import java.util.OptionalDouble;

/**
 * Both curtains at one place of the frame.
 *
 * @param place which
 * @param millimetres from the centre of the frame, at the curtain, above 0 in the direction of
 *     travel
 * @param opensSeconds half light by the first curtain, from time zero of the travel
 * @param coversSeconds half light by the second curtain, likewise
 * @param effectiveSeconds exposure at the place: all its light, bounce and dip in it
 * @param plusMinusSeconds of the exposure, which it is within 19 times in 20
 * @param bounceSeconds light after the second curtain had covered it, in seconds of full light
 * @param bounceAfterSeconds from covering to the first of that light
 * @param dipSeconds light that was lacking while it was open, in seconds of full light: the first
 *     curtain came back
 */
public record PlacePassing(
    Place place,
    double millimetres,
    OptionalDouble opensSeconds,
    OptionalDouble coversSeconds,
    OptionalDouble effectiveSeconds,
    double plusMinusSeconds,
    OptionalDouble bounceSeconds,
    OptionalDouble bounceAfterSeconds,
    OptionalDouble dipSeconds) {
  /** A place that saw no light. */
  static PlacePassing dark(Place place, double millimetres) {
    OptionalDouble none = OptionalDouble.empty();
    return new PlacePassing(place, millimetres, none, none, none, 0, none, none, none);
  }

  /** Whether it saw no light at all. */
  public boolean isDark() {
    return opensSeconds.isEmpty() && coversSeconds.isEmpty();
  }

  /** Light after closing in stops of the exposure without it. */
  public double bounceStops() {
    return stops(bounceSeconds.orElse(0));
  }

  /** What the dip took, in stops of the exposure without it, above 0. */
  public double dipStops() {
    return stops(dipSeconds.orElse(0));
  }

  private double stops(double seconds) {
    double without = effectiveSeconds.orElse(0) - bounceSeconds.orElse(0) + dipSeconds.orElse(0);
    return without > 0 ? Math.log(1 + seconds / without) / Math.log(2) : 0;
  }
}
