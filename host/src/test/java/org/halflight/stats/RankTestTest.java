package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class RankTestTest {
  private static final String PERMEABILITY = "hollander_wolfe_permeability.csv";
  private final Sample term = Published.column(PERMEABILITY, "value", "group", "x");
  private final Sample early = Published.column(PERMEABILITY, "value", "group", "y");

  /** Hollander and Wolfe, permeability of the chorioamnion (R ?wilcox.test): W = 35, p = 0.1272. */
  @Test
  void meetsHollanderAndWolfe() {
    RankTest test = RankTest.of(early, term).get();
    assertThat(test.w()).isEqualTo(35);
    assertThat(test.exact()).isTrue();
    assertThat(test.pAbove()).isCloseTo(0.1272, within(5e-5));
    assertThat(test.p()).isCloseTo(0.2544122544, within(1e-10));

    RankTest other = RankTest.of(term, early).get();
    assertThat(other.w()).isEqualTo(15);
    assertThat(other.pBelow()).isCloseTo(test.pAbove(), within(1e-12));
  }

  /** Same source: shift 0.305, 95 % interval -0.15 to 0.76. */
  @Test
  void hodgesLehmannMeetsHollanderAndWolfe() {
    HodgesLehmann shift = HodgesLehmann.of(early, term, 0.95).get();
    assertThat(shift.shift()).isCloseTo(0.305, within(1e-9));
    assertThat(shift.interval().low()).isCloseTo(-0.15, within(1e-9));
    assertThat(shift.interval().high()).isCloseTo(0.76, within(1e-9));
    assertThat(shift.interval().level()).isBetween(0.95, 0.97);
  }

  /** The definition itself: all ways to deal the values, counted one by one. */
  @Test
  void countsTiesAsTheDefinitionDoes(@Seed(20261125) long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 50; round++) {
      int before = 3 + random.nextInt(4);
      int after = 3 + random.nextInt(4);
      double[] all = random.ints(before + after, 0, 5).asDoubleStream().toArray();
      Sample first = Sample.of(Arrays.copyOf(all, before));
      Sample second = Sample.of(Arrays.copyOfRange(all, before, all.length));
      RankTest test = RankTest.of(first, second).get();

      int dealt = 0;
      int below = 0;
      int above = 0;
      for (int deal = 0; deal < 1 << all.length; deal++) {
        if (Integer.bitCount(deal) == after) {
          double w = pairsAbove(all, deal);
          dealt++;
          below += w <= test.w() ? 1 : 0;
          above += w >= test.w() ? 1 : 0;
        }
      }
      String which = "seed " + seed + " round " + round;
      assertThat(test.pBelow()).as(which).isCloseTo((double) below / dealt, within(1e-12));
      assertThat(test.pAbove()).as(which).isCloseTo((double) above / dealt, within(1e-12));
    }
  }

  private static double pairsAbove(double[] all, int deal) {
    double w = 0;
    for (int i = 0; i < all.length; i++) {
      for (int j = 0; j < all.length; j++) {
        if ((deal >> i & 1) == 1 && (deal >> j & 1) == 0) {
          w += all[i] > all[j] ? 1 : all[i] == all[j] ? 0.5 : 0;
        }
      }
    }
    return w;
  }

  /** 5 against 5: least p 2/252 = 0.0079, which Holm over nine speeds (0.05/9) never lets pass. */
  @Test
  void fiveAgainstFiveNeverPassesHolmOverNineSpeeds() {
    RankTest parted = RankTest.of(Sample.of(1, 2, 3, 4, 5), Sample.of(6, 7, 8, 9, 10)).get();
    assertThat(parted.p()).isCloseTo(2 / 252.0, within(1e-12));
    assertThat(RankTest.leastP(5, 5)).isCloseTo(2 / 252.0, within(1e-12));
    double[] p = new double[9];
    Arrays.fill(p, RankTest.leastP(5, 5));
    assertThat(Arrays.stream(Holm.adjusted(p)).min().getAsDouble()).isGreaterThan(0.05);
    Arrays.fill(p, RankTest.leastP(6, 6));
    assertThat(Arrays.stream(Holm.adjusted(p)).max().getAsDouble()).isLessThan(0.05);
  }

  /** The approximation takes over above 60 firings and must meet the counted chances there. */
  @Test
  void approximationMeetsTheCountAtTheBorder() {
    double[] before = new double[30];
    double[] after = new double[30];
    for (int i = 0; i < 30; i++) {
      before[i] = i % 10;
      after[i] = i % 10 + 1.5 * (i % 2);
    }
    RankTest counted = RankTest.of(Sample.of(before), Sample.of(after)).get();
    double[] all = Arrays.copyOf(before, 60);
    System.arraycopy(after, 0, all, 30, 30);
    RankTest approximated = RankTest.approximated(counted.w(), Ties.groups(all), 30, 30);
    assertThat(counted.exact()).isTrue();
    // Ties thin out the values that W can take, and with them what the normal curve can meet.
    assertThat(approximated.pAbove()).isCloseTo(counted.pAbove(), within(3e-3));
    assertThat(approximated.pBelow()).isCloseTo(counted.pBelow(), within(3e-3));

    double[] more = Arrays.copyOf(after, 31);
    more[30] = 5.5;
    assertThat(RankTest.of(Sample.of(before), Sample.of(more)).get().exact()).isFalse();
    Interval exact = HodgesLehmann.of(Sample.of(before), Sample.of(after), 0.95).get().interval();
    Interval near = HodgesLehmann.of(Sample.of(before), Sample.of(more), 0.95).get().interval();
    assertThat(near.low()).isCloseTo(exact.low(), within(0.51));
    assertThat(near.high()).isCloseTo(exact.high(), within(0.51));
  }

  @Test
  void saysWhatTheFiringsCanReach() {
    HodgesLehmann three = HodgesLehmann.of(Sample.of(1, 2, 3), Sample.of(4, 6, 8), 0.95).get();
    // All differences together, and the level is only 1 - 2/20.
    assertThat(three.interval().low()).isEqualTo(1);
    assertThat(three.interval().high()).isEqualTo(7);
    assertThat(three.interval().level()).isCloseTo(0.9, within(1e-12));
    assertThat(RankTest.of(Sample.of(1, 2), Sample.of(1, 2, 3)))
        .isEqualTo(new NotEnoughFirings<RankTest>(2, 3));
    assertThat(HodgesLehmann.of(Sample.of(1, 2), Sample.of(1, 2, 3), 0.95))
        .isEqualTo(new NotEnoughFirings<HodgesLehmann>(2, 3));
    assertThat(RankTest.of(Sample.of(1, 1, 1), Sample.of(1, 1, 1)))
        .isEqualTo(new NoScatter<RankTest>());
  }
}
