package org.halflight.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class PupilLightTest {
  /** Full light of a round pupil whose light is 1 - a r^2 about a place off its middle. */
  private static double light(double fall, double off) {
    double sum = 0;
    int n = 400;
    int inside = 0;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < n; k++) {
        double x = (2.0 * i + 1) / n - 1;
        double y = (2.0 * k + 1) / n - 1;
        if (x * x + y * y < 1) {
          inside++;
          sum += 1 - fall * ((x - off) * (x - off) + y * y);
        }
      }
    }
    return sum / inside;
  }

  /** Integral of the light over the opening of a round hole, as a share of full light. */
  private static double exposure(DoubleUnaryOperator brightness) {
    int n = 4000;
    double[] light = new double[n + 1];
    for (int i = 1; i <= n; i++) {
      double r = (i - 0.5) / n;
      light[i] = light[i - 1] + brightness.applyAsDouble(r) * r / n;
    }
    double sum = 0;
    for (int i = 1; i <= n; i++) {
      sum += (light[i - 1] + light[i]) / 2 / n;
    }
    return sum / light[n];
  }

  @Test
  void byHowMuchTimesReadLongByCountingLight() {
    double even = exposure(r -> 1);
    for (double fall : new double[] {0, 0.1, 0.2, 0.5, 1}) {
      assertThat(PupilLight.readsLongShare(fall))
          .as("fall %s", fall)
          .isCloseTo(exposure(r -> 1 - fall * r * r) - even, within(2e-6));
    }
    // By hand: 0.4/15 over 1.8.
    assertThat(PupilLight.readsLongShare(0.2)).isCloseTo(0.014815, within(1e-6));
    assertThatIllegalArgumentException().isThrownBy(() -> PupilLight.readsLongShare(1.1));
  }

  /** Light that falls in a straight line to the same edge makes less of it. */
  @Test
  void aStraightFallToTheSameEdgeReadsLessLong() {
    double even = exposure(r -> 1);
    for (double fall : new double[] {0.1, 0.2, 0.5}) {
      assertThat(exposure(r -> 1 - fall * r) - even).isLessThan(PupilLight.readsLongShare(fall));
    }
  }

  @Test
  void aPanelMovedByARadiusTellsItsFall() {
    for (double fall : new double[] {0, 0.05, 0.2, 0.5}) {
      double inPlace = light(fall, 0);
      PanelTest test = new PanelTest(inPlace, List.of(light(fall, 1), light(fall, -1)), inPlace, 0);
      assertThat(test.fallBound()).as("fall %s", fall).isCloseTo(fall, within(2e-3));
    }
  }

  @Test
  void readingsAndLampLeaveSomethingOpen() {
    // Even light: a drift of a hundredth counts whole, and 1.96 times the root of 1.5 of a
    // thousandth for the readings.
    PanelTest test = new PanelTest(1000, List.of(1005.0, 1005.0), 1010, 1);
    assertThat(test.fallBound()).isCloseTo(0.00995 + 0.00239, within(1e-5));
    // Brighter when moved: the panel was not in the middle, and nobody knows how it lies.
    assertThat(new PanelTest(1000, List.of(900.0, 1100.0), 1000, 0).fallBound())
        .isCloseTo(2 * 0.1 / 1.9, within(1e-4));
    // Moved right off the lens it limits nothing.
    assertThat(new PanelTest(1000, List.of(0.0), 1000, 50).fallBound()).isLessThanOrEqualTo(1);
    assertThatIllegalArgumentException().isThrownBy(() -> new PanelTest(1000, List.of(), 1000, 1));
  }
}
