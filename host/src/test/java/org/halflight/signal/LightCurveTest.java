package org.halflight.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LightCurveTest {
  private final LightCurve trapezoid =
      new LightCurve(new double[] {0, 1, 3, 5}, new double[] {0, 1, 1, 0});

  @Test
  void aTrapezoidByElementaryGeometry() {
    assertThat(trapezoid.integralSeconds()).isEqualTo(3.5);
    assertThat(trapezoid.secondsAbove(0.5)).isEqualTo(3.5);
    assertThat(trapezoid.secondsAbove(0.25)).isEqualTo(4.25);
    assertThat(trapezoid.secondsAbove(1)).isZero();
    assertThat(trapezoid.totalSeconds()).isEqualTo(5);
    assertThat(trapezoid.peak()).isEqualTo(1);
  }

  @Test
  void lightBetweenPointsAndOutside() {
    assertThat(trapezoid.at(0.5)).isEqualTo(0.5);
    assertThat(trapezoid.at(4)).isEqualTo(0.5);
    assertThat(trapezoid.at(-1)).isZero();
    assertThat(trapezoid.at(6)).isZero();
    assertThat(trapezoid.shifted(10).at(10.5)).isCloseTo(0.5, within(1e-12));
  }

  @Test
  void darkAtBothEndsIsNotPartOfTheTotal() {
    LightCurve padded = new LightCurve(new double[] {0, 2, 3, 4, 9}, new double[] {0, 0, 1, 0, 0});
    assertThat(padded.totalSeconds()).isEqualTo(2);
  }

  @Test
  void curvesThatAreNoneAreRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LightCurve(new double[] {0, 1}, new double[] {0, 1}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LightCurve(new double[] {1, 0}, new double[] {0, 0}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LightCurve(new double[] {0, 1, 2}, new double[] {0, Double.NaN, 0}));
  }
}
