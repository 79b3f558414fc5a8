package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

class OneLevelMethodTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  @Test
  void aWidthAtTheWrongLevelIsMendedByTheRampsOfATwoLevelMeasurement() {
    // Ramps of 1 ms and 1.5 ms with even area, 1 ms open: 2.25 ms effective.
    LightCurve curve = CurveEdges.curve(1e-3, 1e-3, 1.5e-3, CurveEdges::areaLinear, 1);
    Exposure.Timed timed =
        (Exposure.Timed)
            LeafExposureMethod.measure(
                CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, RATE);
    Firing oneLevel = new Firing(CurveEdges.edges(curve, Channel.OUTER_A, 0.1), List.of());
    double width = OneLevelMethod.widthSeconds(oneLevel, Channel.OUTER_A, RATE).orElseThrow();
    assertThat(width).isCloseTo(3.25e-3, within(1e-7));
    assertThat(
            OneLevelMethod.effectiveSeconds(
                    width,
                    0.1,
                    timed.blades().orElseThrow().stopTable().openingPlusClosingSeconds())
                .areaLinear())
        .isCloseTo(2.25e-3, within(3e-7));
  }

  @Test
  void anOpeningThatIsNotWholeHasNoWidth() {
    Edge rise = new Edge(Channel.OUTER_A, true, 10);
    Edge fall = new Edge(Channel.OUTER_A, false, 20);
    assertThat(width(List.of(rise, fall))).isPresent();
    assertThat(width(List.of(rise))).isEmpty();
    assertThat(width(List.of(fall))).isEmpty();
    assertThat(width(List.of(rise, fall), Firing.Damage.LINES_LOST)).isEmpty();
    assertThat(width(List.of(new Edge(Channel.CLICK, true, 1)))).isEmpty();
  }

  private static OptionalDouble width(List<Edge> edges, Firing.Damage... damage) {
    return OneLevelMethod.widthSeconds(new Firing(edges, List.of(damage)), Channel.OUTER_A, RATE);
  }
}
