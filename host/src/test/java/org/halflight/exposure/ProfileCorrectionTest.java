package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class ProfileCorrectionTest {
  private static final RigProfile PROFILE =
      new RigProfile(
          new ProfiledRig("R-0001", "full", "1.0.0"),
          LocalDate.of(2025, 3, 9),
          new LightRange(0, 800, 800),
          Optional.empty(),
          Map.of(Channel.CENTRE_HIGH, new ComparatorTrips(5, 3, 0.3)),
          Optional.of(new ClockRate(5000, 1, Double.POSITIVE_INFINITY, ClockRate.Source.GENERATOR)),
          Optional.empty(),
          Map.of(Channel.CENTRE_LOW, new EdgeDelays(1e-6, 0, 3e-6, 0)),
          Map.of(),
          OptionalDouble.empty());

  private final ProfileCorrection correction = new ProfileCorrection(PROFILE);

  @Test
  void eachEdgeGoesBackByItsOwnDelay() {
    Firing measured =
        new Firing(
            List.of(
                new Edge(Channel.CENTRE_LOW, true, 1000),
                new Edge(Channel.CENTRE_HIGH, true, 1010),
                new Edge(Channel.CENTRE_HIGH, false, 2000),
                new Edge(Channel.CENTRE_LOW, false, 2010)),
            List.of());

    // By hand: 1 us is 16 ticks, 3 us are 48; the high channel has no delays of its own, and the
    // order follows the corrected times.
    assertThat(correction.firing(measured, TickRate.BOARD_16_MHZ).edges())
        .containsExactly(
            new Edge(Channel.CENTRE_LOW, true, 984),
            new Edge(Channel.CENTRE_HIGH, true, 1010),
            new Edge(Channel.CENTRE_LOW, false, 1962),
            new Edge(Channel.CENTRE_HIGH, false, 2000));
  }

  @Test
  void lightThatChangesFasterThanTheDelaysDifferKeepsTheOrderOfItsEdges() {
    Firing speck =
        new Firing(
            List.of(
                new Edge(Channel.CENTRE_LOW, true, 1000),
                new Edge(Channel.CENTRE_LOW, false, 1016)),
            List.of());
    // 16 ticks of light, of which 32 are delay: none is left, and it still rises before it falls.
    assertThat(correction.firing(speck, TickRate.BOARD_16_MHZ).edges())
        .containsExactly(
            new Edge(Channel.CENTRE_LOW, true, 984), new Edge(Channel.CENTRE_LOW, false, 984));
  }

  @Test
  void comparatorsSwitchWhereTheProfileSaysUnlessTheLightSettingLooked() {
    TripPoints trips = correction.trips(TripPoints.EXACT);
    assertThat(trips.low()).isEqualTo(ComparatorTrips.EXACT);
    assertThat(trips.high().offsetCounts()).isEqualTo(4);
    ComparatorTrips newer = ComparatorTrips.around(1, 2, 0.3);
    assertThat(correction.trips(new TripPoints(newer, newer)))
        .isEqualTo(new TripPoints(newer, newer));
  }

  @Test
  void theClockRunsAtItsOwnRate() {
    assertThat(correction.rate(TickRate.BOARD_16_MHZ).ticksPerSecond()).isEqualTo(16_080_000);
    assertThat(correction.rate(TickRate.BOARD_16_MHZ).seconds(16_080_000))
        .isCloseTo(1, within(1e-12));
  }
}
