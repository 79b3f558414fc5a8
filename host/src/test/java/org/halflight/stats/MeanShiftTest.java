package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class MeanShiftTest {
  private final Sample us = Published.column("nist_auto83b_ttest.csv", "us_mpg");
  private final Sample japan = Published.column("nist_auto83b_ttest.csv", "japan_mpg");

  /** NIST/SEMATECH e-Handbook 1.3.5.3: N, mean and sd of both, pooled T = -12.62059 with 326. */
  @Test
  void pooledMeetsTheHandbook() {
    assertThat(us.n()).isEqualTo(249);
    assertThat(us.mean().get()).isCloseTo(20.14458, within(5e-6));
    assertThat(us.sd().get()).isCloseTo(6.41470, within(5e-6));
    assertThat(japan.n()).isEqualTo(79);
    assertThat(japan.mean().get()).isCloseTo(30.48101, within(5e-6));
    assertThat(japan.sd().get()).isCloseTo(6.10771, within(5e-6));

    MeanShift shift = MeanShift.pooled(japan, us, 0.95).get();
    assertThat(shift.t()).isCloseTo(-12.62059, within(5e-6));
    assertThat(shift.degreesOfFreedom()).isEqualTo(326);
    assertThat(shift.shift()).isCloseTo(20.14458 - 30.48101, within(1e-5));
    assertThat(shift.p()).isLessThan(1e-20);
  }

  /** Same page, unequal variances: T = -12.94627; degrees 136.8750, printed in single precision. */
  @Test
  void welchMeetsTheHandbook() {
    MeanShift shift = MeanShift.welch(japan, us, 0.95).get();
    assertThat(shift.t()).isCloseTo(-12.94627, within(5e-6));
    assertThat(shift.degreesOfFreedom()).isCloseTo(136.87499, within(2e-5));
  }

  /** Half width over standard error is t(0.975, 326) = 1.9673, e-Handbook 1.3.5.3. */
  @Test
  void intervalIsAsWideAsTheTableSays() {
    MeanShift shift = MeanShift.pooled(japan, us, 0.95).get();
    double half = (shift.interval().high() - shift.interval().low()) / 2;
    assertThat(half / shift.standardError()).isCloseTo(1.9673, within(5e-5));
    assertThat(shift.interval().contains(shift.shift())).isTrue();
    assertThat(shift.interval().contains(0)).isFalse();
  }

  @Test
  void pTurnsAtTheEndOfTheInterval() {
    Sample before = Sample.of(0.1, 0.3, 0.2, 0.5);
    Sample after = Sample.of(0.0, -0.2, 0.1, 0.05, -0.1);
    double p = MeanShift.welch(before, after, 0.95).get().p();
    Interval interval = MeanShift.welch(before, after, 1 - p).get().interval();
    assertThat(interval.high()).isCloseTo(0, within(1e-9));
  }

  @Test
  void saysWhyThereIsNoShift() {
    assertThat(MeanShift.welch(Sample.of(1), Sample.of(1, 2, 3), 0.95))
        .isEqualTo(new NotEnoughFirings<MeanShift>(1, 2));
    assertThat(MeanShift.pooled(Sample.of(1, 2), Sample.of(), 0.95))
        .isEqualTo(new NotEnoughFirings<MeanShift>(0, 2));
    assertThat(MeanShift.welch(Sample.of(0.1, 0.1, 0.1), Sample.of(0.3, 0.3, 0.3), 0.95))
        .isEqualTo(new NoScatter<MeanShift>());
    assertThat(MeanShift.pooled(Sample.of(0.1, 0.1, 0.1), Sample.of(0.3, 0.3, 0.3), 0.95))
        .isEqualTo(new NoScatter<MeanShift>());
  }
}
