package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.halflight.fixtures.PublishedTable;
import org.junit.jupiter.api.Test;

class ToleranceTest {
  /** Computed table: percent of time as stops, stops as percent. */
  @Test
  void percentAndStops() {
    for (Map<String, String> row : PublishedTable.rows("tolerance_conversion.csv")) {
      String given = row.get("plus_minus_pct_or_stop");
      if (given.startsWith("stop ")) {
        double stops = stops(given.substring(5));
        Tolerance tolerance = new Tolerance(stops, stops);
        assertThat(tolerance.slowPercent())
            .as(given)
            .isCloseTo(percent(row.get("upper")), within(5e-4));
        assertThat(-tolerance.fastPercent())
            .as(given)
            .isCloseTo(percent(row.get("lower")), within(5e-4));
      } else {
        Tolerance tolerance = Tolerance.ofPercent(Double.parseDouble(given));
        assertThat(tolerance.slowStops())
            .as(given)
            .isCloseTo(Double.parseDouble(row.get("upper")), within(5e-5));
        assertThat(-tolerance.fastStops())
            .as(given)
            .isCloseTo(Double.parseDouble(row.get("lower")), within(5e-5));
      }
    }
  }

  private static double stops(String text) {
    int slash = text.indexOf('/');
    return slash < 0
        ? Double.parseDouble(text)
        : Double.parseDouble(text.substring(0, slash))
            / Double.parseDouble(text.substring(slash + 1));
  }

  private static double percent(String text) {
    return Double.parseDouble(text.replace(" %", ""));
  }

  /** Trade custom, not a standard's limit. */
  @Test
  void aThirdOfAStopAndHalfAStopAtTheTop() {
    Dial dial = Dial.find("leaf").orElseThrow();
    assertThat(Tolerance.usual(dial, dial.top())).isEqualTo(Tolerance.HALF);
    assertThat(Tolerance.usual(dial, MarkedSpeed.parse("1/250"))).isEqualTo(Tolerance.THIRD);
  }

  @Test
  void theLimitsThemselvesAreWithin() {
    Tolerance tolerance = new Tolerance(0.5, 0.25);
    assertThat(tolerance.contains(0.5)).isTrue();
    assertThat(tolerance.contains(-0.25)).isTrue();
    assertThat(tolerance.contains(0.5001)).isFalse();
    assertThat(tolerance.contains(-0.2501)).isFalse();
    assertThat(tolerance.contains(Double.NaN)).isFalse();
  }

  @Test
  void noToleranceAtAllIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Tolerance(0, 0.3));
    assertThatIllegalArgumentException().isThrownBy(() -> new Tolerance(0.3, Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> Tolerance.ofPercent(100));
  }
}
