package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.fixtures.PublishedTable;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** Shutters that others measured. The sources stand in the rows of the table. */
class PublishedShutterTest {
  private static String value(String id, String item) {
    Map<String, String> found =
        PublishedTable.rows("published_measurements.csv").stream()
            .filter(row -> row.get("id").equals(id) && row.get("item").equals(item))
            .findFirst()
            .orElseThrow();
    return found.get("value");
  }

  private static double seconds(String fraction) {
    return MarkedSpeed.parse(fraction).literalSeconds();
  }

  /**
   * Welander, Transactions of the Symposium on Photo Interpretation: an aerial lens shutter marked
   * 1/250 gave 1/280 s at 67 % efficiency, so 5.3305 ms in total, -0.1635 stop against the marking
   * and -0.1293 against 1/256 s. A curve with these figures is measured back from its edges.
   */
  @Test
  void aerialLensShutter() {
    MarkedSpeed marked = MarkedSpeed.parse(value("W1", "marked setting"));
    double effective = seconds(value("W1", "laboratory effective exposure time"));
    double efficiency = Double.parseDouble(value("W1", "laboratory efficiency")) / 100;
    double total = effective / efficiency;
    assertThat(1e3 * total).isCloseTo(5.3305, within(5e-5));

    double ramp = total - effective;
    LightCurve curve = CurveEdges.curve(ramp, total - 2 * ramp, ramp, CurveEdges::areaLinear, 1);
    Timed timed =
        (Timed)
            LeafExposureMethod.measure(
                CurveEdges.firing(curve, LevelPair.GAUSS), LevelPair.GAUSS, TickRate.BOARD_16_MHZ);
    assertThat(1 / timed.effectiveSeconds()).isCloseTo(280, within(0.01));
    assertThat(timed.blades().orElseThrow().efficiency().areaLinear())
        .isCloseTo(0.67, within(1e-4));
    assertThat(1e3 * timed.blades().orElseThrow().totalSeconds().areaLinear())
        .isCloseTo(5.3305, within(3e-4));
    assertThat(Stops.between(timed.effectiveSeconds(), marked.seconds(Reference.LITERAL)))
        .isCloseTo(-0.1635, within(1e-4));
    assertThat(Stops.between(timed.effectiveSeconds(), marked.seconds(Reference.EXACT)))
        .isCloseTo(-0.1293, within(1e-4));
  }

  /** Practical Photography no. 2, sect. 702: what cheap lens shutters of the 1900s gave. */
  @Test
  void cheapLensShutters() {
    assertThat(Stops.between(seconds("1/10"), seconds("1/25")))
        .isCloseTo(Double.parseDouble(value("P1", "marked 1/25 may be 1/10")), within(5e-5));
    assertThat(Stops.between(seconds("1/60"), seconds("1/50")))
        .isCloseTo(Double.parseDouble(value("P2", "marked 1/50 may be 1/60")), within(5e-5));
  }
}
