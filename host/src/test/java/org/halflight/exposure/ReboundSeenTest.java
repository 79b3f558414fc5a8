package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Areas of rectangles and triangles, worked out by hand. */
class ReboundSeenTest {
  private static final double FLOOR = BrightStretch.LEAST_LIGHT;

  @Test
  void aCurveSeesLightThatStaysBelowTheLowLevel() {
    // Full light for 10 ms with steps at its ends, dark for 1 ms, then a triangle of a tenth of
    // full light over 2 ms: its area is 0.1 ms, a hundredth of the main opening.
    double[] seconds = {0, 1e-3, 1e-3, 11e-3, 11e-3, 12e-3, 13e-3, 14e-3, 15e-3};
    double[] light = {0, 0, 1, 1, 0, 0, 0.1, 0, 0};

    ReboundSeen seen = ReboundSeen.of(CurvePoints.of(seconds, light), FLOOR);

    assertThat(seen.afterShare()).isCloseTo(0.01, within(1e-12));
    assertThat(seen.afterSeconds()).isCloseTo(0.1e-3, within(1e-12));
    assertThat(seen.startSeconds()).isCloseTo(2e-3, within(1e-12));
    assertThat(seen.peak()).isCloseTo(0.1, within(1e-12));
    assertThat(seen.beforeShare()).isZero();
    assertThat(seen.windowSeconds()).isCloseTo(4e-3, within(1e-12));
    assertThat(seen.looked()).isFalse();
  }

  @Test
  void tenMillisecondsAfterTheClosingAreALook() {
    double[] seconds = {0, 1e-3, 1e-3, 3e-3, 3e-3, 13.1e-3};
    double[] light = {0, 0, 1, 1, 0, 0.009};

    ReboundSeen seen = ReboundSeen.of(CurvePoints.of(seconds, light), FLOOR);

    assertThat(seen.looked()).isTrue();
    assertThat(seen.afterSeconds()).isZero();
    assertThat(seen.mainSeconds()).isCloseTo(2e-3, within(1e-12));
  }

  @Test
  void lightLaterThanTenMillisecondsIsNoRebound() {
    double[] seconds = {0, 0, 2e-3, 2e-3, 13e-3, 14e-3, 15e-3};
    double[] light = {0, 1, 1, 0, 0, 0.1, 0};

    ReboundSeen seen = ReboundSeen.of(CurvePoints.of(seconds, light), FLOOR);

    assertThat(seen.afterSeconds()).isZero();
    assertThat(seen.laterSeconds()).isCloseTo(0.1e-3, within(1e-12));
  }

  /** The curve has the rule of the edges: what begins in time is one exposure to its end. */
  @Test
  void aReboundThatBeginsWithinTenMillisecondsMayLastLonger() {
    double[] seconds = {0, 0, 2e-3, 2e-3, 11e-3, 13e-3, 15e-3, 16e-3};
    double[] light = {0, 1, 1, 0, 0, 0.1, 0, 0};

    ReboundSeen seen = ReboundSeen.of(CurvePoints.of(seconds, light), FLOOR);

    assertThat(seen.afterSeconds()).isCloseTo(0.2e-3, within(1e-12));
    assertThat(seen.laterSeconds()).isZero();
  }

  @Test
  void lightBeforeTheMainOpeningIsApart() {
    double[] seconds = {0, 1e-3, 2e-3, 3e-3, 3e-3, 8e-3, 8e-3};
    double[] light = {0, 0.1, 0, 0, 1, 1, 0};

    ReboundSeen seen = ReboundSeen.of(CurvePoints.of(seconds, light), FLOOR);

    assertThat(seen.beforeSeconds()).isCloseTo(0.1e-3, within(1e-12));
    assertThat(seen.beforeShare()).isCloseTo(0.02, within(1e-12));
  }

  @Test
  void aCurveWithoutLightHasSeenNothing() {
    ReboundSeen seen =
        ReboundSeen.of(CurvePoints.of(new double[] {0, 0.02}, new double[] {0, 0}), FLOOR);

    assertThat(seen.looked()).isFalse();
    assertThat(seen.afterShare()).isZero();
  }
}
