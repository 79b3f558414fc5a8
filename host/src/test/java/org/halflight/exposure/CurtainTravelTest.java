package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CurtainTravelTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  @Test
  void slopeAndRangeAreInStops() {
    assertThat(travel(1e-3, 4e-3, 2e-3).slopeStops().orElseThrow()).isCloseTo(1, within(1e-12));
    assertThat(travel(1e-3, 4e-3, 2e-3).rangeStops().orElseThrow()).isCloseTo(2, within(1e-12));
  }

  /** A slit that has closed to nothing by the time it is at the end. */
  @Test
  void aPlaceOfNoExposureHasNoStops() {
    assertThat(travel(1e-3, 0.5e-3, 0).slopeStops()).isEmpty();
    assertThat(travel(1e-3, 0.5e-3, 0).rangeStops()).isEmpty();
  }

  private static CurtainTravel travel(double... effectiveSeconds) {
    List<PlacePassing> places =
        Arrays.stream(Place.values()).map(place -> at(place, effectiveSeconds)).toList();
    return new CurtainTravel(
        0,
        CurtainGeometry.usual(36),
        Direction.A_TO_B,
        places,
        Optional.empty(),
        Optional.empty(),
        0,
        NONE,
        NONE,
        NONE,
        0,
        new ByLaw(0, 0),
        new ByLaw(0, 0),
        Set.of(),
        Set.of());
  }

  private static PlacePassing at(Place place, double[] effectiveSeconds) {
    double opens = 5e-3 * place.index();
    double effective = effectiveSeconds[place.index()];
    return new PlacePassing(
        place,
        16.2 * (place.index() - 1),
        OptionalDouble.of(opens),
        OptionalDouble.of(opens + effective),
        OptionalDouble.of(effective),
        1e-5,
        NONE,
        NONE,
        NONE);
  }
}
