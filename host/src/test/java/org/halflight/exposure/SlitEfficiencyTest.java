package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.halflight.fixtures.PublishedTable;
import org.halflight.speeds.Stops;
import org.junit.jupiter.api.Test;

class SlitEfficiencyTest {
  /**
   * H. E. Ives, Airplane Photography, 1920: f/6, gap 1, slit 1 give 6/7; gap 4 cm, slit 1 cm 60 %.
   */
  @Test
  void workedExamplesOfIves() {
    assertThat(SlitEfficiency.of(1, 1, 6)).isCloseTo(6 / 7.0, within(1e-12));
    assertThat(SlitEfficiency.of(10, 40, 6)).isCloseTo(0.60, within(1e-12));
  }

  /** The grid computed from the formula of Ives. */
  @Test
  void grid() {
    for (Map<String, String> row : PublishedTable.rows("focal_plane_penumbra.csv")) {
      double slit = Double.parseDouble(row.get("slit_mm"));
      double gap = Double.parseDouble(row.get("curtain_to_film_mm"));
      double fNumber = Double.parseDouble(row.get("f_number"));
      assertThat(SlitEfficiency.penumbraMillimetres(gap, fNumber))
          .isCloseTo(Double.parseDouble(row.get("penumbra_mm=d/N")), within(5.1e-5));
      double efficiency = SlitEfficiency.of(slit, gap, fNumber);
      assertThat(100 * efficiency)
          .isCloseTo(Double.parseDouble(row.get("efficiency_pct=a/(a+d/N)")), within(5.1e-3));
      assertThat(Stops.between(1, efficiency))
          .isCloseTo(Double.parseDouble(row.get("total_over_effective_stops")), within(5.1e-5));
    }
  }

  @Test
  void noSlitIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> SlitEfficiency.of(0, 1, 6));
    assertThatIllegalArgumentException().isThrownBy(() -> SlitEfficiency.of(1, 1, 0));
  }
}
