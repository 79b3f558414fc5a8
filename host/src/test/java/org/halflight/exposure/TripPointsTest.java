package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.halflight.profile.ComparatorTrips;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** Simulated comparators with offset and hysteresis; no rig. */
class TripPointsTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  @Test
  void codesAreChosenForWhereTheComparatorsSwitch() {
    TripPoints trips =
        new TripPoints(ComparatorTrips.around(8, 6, 0), ComparatorTrips.around(-8, 6, 0));
    ThresholdCodes plain = ((ThresholdCodes.Found) ThresholdCodes.forLight(8, 808)).codes();
    ThresholdCodes placed = ((ThresholdCodes.Found) ThresholdCodes.forLight(8, 808, trips)).codes();
    // Four counts a code.
    assertThat(placed.low()).isEqualTo(plain.low() - 2);
    assertThat(placed.high()).isEqualTo(plain.high() + 2);
  }

  @Test
  void crossingsMovedAlongTheRampGiveTheTimeOfExactLevels() {
    LightLevels light = new LightLevels(8, 808, 178, 638);
    TripPoints trips =
        new TripPoints(ComparatorTrips.around(8, 12, 0), ComparatorTrips.around(6, 12, 0));
    LevelCorrection correction = trips.correction(light).orElseThrow();
    assertThat(correction.isAllowed()).isTrue();
    assertThat(correction.rising().low()).isCloseTo((178 + 14 - 8) / 800.0, within(1e-12));
    assertThat(correction.falling().high()).isCloseTo((638 + 0 - 8) / 800.0, within(1e-12));
    for (BladeLaw law : new BladeLaw[] {BladeLaw.AREA_LINEAR, BladeLaw.ROUND_RADIUS_LINEAR}) {
      LightCurve curve = CurveEdges.curve(1e-3, 1e-3, 1.5e-3, law::openFraction, 1);
      double exact =
          ((Exposure.Timed)
                  LeafExposureMethod.measure(
                      CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, RATE))
              .effectiveSeconds();
      LevelPair stands = ((LightLevels.Known) light.levels()).levels();
      Exposure.Timed seen =
          (Exposure.Timed) LeafExposureMethod.measure(seen(curve, correction), stands, RATE);
      double power = law == BladeLaw.AREA_LINEAR ? 1 : 2;
      assertThat(Math.abs(seen.effectiveSeconds() - exact)).isGreaterThan(8e-6);
      assertThat(correction.effectiveSeconds(seen, RATE, power, power))
          .as("%s", law)
          .isCloseTo(exact, within(4 / 16e6));
      // Without a law, a straight line between the two levels. By hand for the round hole: it
      // starts
      // 0.00200 of 1 ms late and ends 0.00073 of 1.5 ms early, 3.1 us in all; nothing for the
      // other.
      double line = law == BladeLaw.AREA_LINEAR ? 0 : -3.1e-6;
      assertThat(correction.effectiveSeconds(seen, RATE, 1, 1) - exact)
          .as("%s", law)
          .isCloseTo(line, within(4 / 16e6));
    }
  }

  private static Firing seen(LightCurve curve, LevelCorrection at) {
    List<Edge> edges = new ArrayList<>();
    for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
      boolean low = channel == Channel.CENTRE_LOW;
      double rise = low ? at.rising().low() : at.rising().high();
      double fall = low ? at.falling().low() : at.falling().high();
      edges.add(CurveEdges.edges(curve, channel, rise).get(0));
      edges.add(CurveEdges.edges(curve, channel, fall).get(1));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  @Test
  void lightThatAllowsNoLevelsAllowsNoCorrection() {
    assertThat(TripPoints.EXACT.correction(new LightLevels(8, 1010, 178, 638))).isEmpty();
    TripPoints wild = new TripPoints(ComparatorTrips.around(-200, 0, 0), ComparatorTrips.EXACT);
    assertThat(wild.correction(new LightLevels(8, 808, 178, 638))).isEmpty();
  }
}
