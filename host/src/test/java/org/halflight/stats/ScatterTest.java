package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class ScatterTest {
  private final List<Sample> gears =
      IntStream.rangeClosed(1, 10)
          .mapToObj(
              batch ->
                  Published.column(
                      "nist_gear_levene.csv", "diameter", "batch", Integer.toString(batch)))
          .toList();

  /** NIST/SEMATECH e-Handbook 1.3.5.10: W = 1.705910 with 9 and 90, p 0.0991; digits as READ. */
  @Test
  void brownForsytheMeetsTheHandbook() {
    BrownForsythe test = BrownForsythe.of(gears).get();
    assertThat(test.w()).isCloseTo(1.7059176930008935, within(1e-9));
    assertThat(test.degreesBetween()).isEqualTo(9);
    assertThat(test.degreesWithin()).isEqualTo(90);
    assertThat(test.p()).isCloseTo(0.0991, within(5e-5));
  }

  /** NIST/SEMATECH e-Handbook 1.3.5.7: T = 20.785873428064864, p = 0.0136358632781. */
  @Test
  void bartlettMeetsTheHandbook() {
    Bartlett test = Bartlett.of(gears).get();
    assertThat(test.t()).isCloseTo(20.785873428064864, within(1e-9));
    assertThat(test.degreesOfFreedom()).isEqualTo(9);
    assertThat(test.p()).isCloseTo(0.0136358632781, within(1e-11));
  }

  /**
   * F(0.975; 4, 4) = 9.60453 (any F table): with 5 against 5 the interval of the ratio reaches from
   * the ratio over sqrt(9.60453) to the ratio times it.
   */
  @Test
  void scatterRatioIntervalFollowsTheTable() {
    Sample before = Sample.of(1, 2, 3, 4, 5);
    Sample after = Sample.of(3, 6, 9, 12, 15);
    ScatterRatio ratio = ScatterRatio.of(before, after, 0.95).get();
    assertThat(ratio.ratio()).isCloseTo(3, within(1e-12));
    assertThat(ratio.interval().low()).isCloseTo(3 / Math.sqrt(9.60453), within(1e-5));
    assertThat(ratio.interval().high()).isCloseTo(3 * Math.sqrt(9.60453), within(1e-4));
  }

  @Test
  void tooFewFiringsAreSaid() {
    List<Sample> few = List.of(Sample.of(1, 2), Sample.of(1, 2, 3));
    assertThat(BrownForsythe.of(few)).isEqualTo(new NotEnoughFirings<BrownForsythe>(2, 3));
    assertThat(Bartlett.of(few).known()).isPresent();
    List<Sample> single = List.of(Sample.of(1), Sample.of(1, 2, 3));
    assertThat(Bartlett.of(single)).isEqualTo(new NotEnoughFirings<Bartlett>(1, 2));
    assertThat(ScatterRatio.of(single.get(0), single.get(1), 0.95))
        .isEqualTo(new NotEnoughFirings<ScatterRatio>(1, 2));
  }

  @Test
  void equalDistancesAreNoScatterInSpiteOfRounding() {
    Sample coarse = Sample.of(0.1, 0.2, 0.1, 0.2);
    Sample coarser = Sample.of(0.1, 0.4, 0.1, 0.4);
    assertThat(BrownForsythe.of(List.of(coarse, coarser)))
        .isEqualTo(new NoScatter<BrownForsythe>());
    Sample still = Sample.of(0.1, 0.1, 0.1);
    assertThat(Bartlett.of(List.of(still, coarse))).isEqualTo(new NoScatter<Bartlett>());
    assertThat(ScatterRatio.of(still, coarse, 0.95)).isEqualTo(new NoScatter<ScatterRatio>());
  }
}
