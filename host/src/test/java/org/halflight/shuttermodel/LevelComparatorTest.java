package org.halflight.shuttermodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class LevelComparatorTest {
  private static final FrontEnd FRONT = FrontEnd.ideal(0, 4000);

  /** 4 mV a microsecond up and down, between them a dip of 20 mV. */
  private static final LightPath DIPPING =
      new LightPath(
          new double[] {0, 0.5e-3, 0.505e-3, 0.51e-3, 1e-3, 2e-3},
          new double[] {0, 0.5025, 0.4975, 0.5025, 1, 0});

  @Test
  void anIdealOneSwitchesWhereTheCrossingsAre() {
    assertThat(FRONT.switches(DIPPING, 0, 2000, LevelComparator.IDEAL))
        .isEqualTo(FRONT.crossings(DIPPING, 0, 2000))
        .hasSize(4);
  }

  @Test
  void hysteresisOverlooksADipThatIsSmallerThanIt() {
    LevelComparator wide = new LevelComparator(0, 40, 0, 0);
    List<Crossing> seen = FRONT.switches(DIPPING, 0, 2000, wide);
    assertThat(seen).extracting(Crossing::rising).containsExactly(true, false);
    // On at 2020 mV on the way up, off at 1980 mV on the way down, 4 mV a microsecond.
    double fallen = 2e-3 - 1980 / 4e6;
    assertThat(seen.get(1).seconds()).isCloseTo(fallen, within(1e-9));
    LevelComparator narrow = new LevelComparator(0, 10, 0, 0);
    assertThat(FRONT.switches(DIPPING, 0, 2000, narrow)).hasSize(4);
  }

  @Test
  void anOffsetMakesARisingEdgeLateAndAFallingOneEarly() {
    LightPath triangle = new LightPath(new double[] {0, 1e-3, 2e-3}, new double[] {0, 1, 0});
    List<Crossing> seen = FRONT.switches(triangle, 0, 2000, new LevelComparator(8, 0, 0, 0));
    assertThat(seen.get(0).seconds()).isCloseTo(0.5e-3 + 8 / 4e6, within(1e-9));
    assertThat(seen.get(1).seconds()).isCloseTo(1.5e-3 - 8 / 4e6, within(1e-9));
  }

  /** The integral of the overdrive s t of a ramp reaches K after sqrt(2 K / s). */
  @Test
  void theDelayFallsWithTheSlope() {
    LevelComparator slow = new LevelComparator(0, 0, 0.3, 5);
    assertThat(slow.delaySeconds(Double.POSITIVE_INFINITY)).isCloseTo(0.3e-6, within(1e-12));
    for (double perMicrosecond : new double[] {0.5, 4, 100}) {
      double gathered = (slow.delaySeconds(perMicrosecond * 1e6) * 1e6 - 0.3);
      assertThat(perMicrosecond * gathered * gathered / 2).isCloseTo(5, within(1e-9));
    }
    // Light that stands on the threshold is not waited for without end.
    assertThat(slow.delaySeconds(0)).isLessThan(1e-3);
  }
}
