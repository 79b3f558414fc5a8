package org.halflight.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.Consumer;
import org.halflight.fixtures.Seed;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.junit.jupiter.api.Test;

class TrendTest {
  /**
   * Sen (1968): slope 4; the ends 3.71 and 4.38 (digits partly cut) are the 4th and the 18th of 21
   * slopes. Sen calls them a 93 % interval. Counted over all 5040 orders they cover 96.98 %, and
   * 93.1 % belong to the 5th and the 17th (the rule of Hollander and Wolfe), so that the printed
   * ends are what asking for more than 93.1 % gives.
   */
  @Test
  void theilSenMeetsSen() {
    Sample y = Published.column("sen1968_theil_sen.csv", "y");
    double[] x = Published.column("sen1968_theil_sen.csv", "x").values();

    TheilSen line = TheilSen.of(x, y, 0.95).get();

    assertThat(line.slope()).isCloseTo(4, within(1e-12));
    assertThat(line.intercept()).isCloseTo(4, within(1e-12));
    assertThat(line.slopeInterval().low()).isCloseTo(3.71, within(0.01));
    assertThat(line.slopeInterval().high()).isCloseTo(4.38, within(0.01));
    assertThat(line.slopeInterval().level()).isCloseTo(0.9698, within(5e-5));

    Interval narrower = TheilSen.of(x, y, 0.93).get().slopeInterval();
    assertThat(narrower.low()).isBetween(3.71, 4.0);
    assertThat(narrower.high()).isBetween(4.0, 4.38);
    assertThat(narrower.level()).isCloseTo(0.9310, within(5e-5));
  }

  /** The level that is stated is how often the interval holds the true slope, over all orders. */
  @Test
  void theilSenIntervalCoversWhatItSays() {
    double[] errors = {-1.31, -0.72, -0.24, 0.09, 0.41, 0.97, 1.55};
    for (double level : new double[] {0.5, 0.9, 0.93, 0.95}) {
      int[] covered = new int[2];
      double stated = TheilSen.ofOrder(Sample.of(errors), level).get().slopeInterval().level();
      everyOrder(
          errors.clone(),
          0,
          order -> {
            Interval interval = TheilSen.ofOrder(Sample.of(order), level).get().slopeInterval();
            covered[0]++;
            covered[1] += interval.contains(0) ? 1 : 0;
          });
      assertThat(stated).isGreaterThanOrEqualTo(level);
      assertThat((double) covered[1] / covered[0]).isCloseTo(stated, within(1e-12));
    }
  }

  /**
   * Little, College of the Holy Cross, 'A Mann-Kendall Example (By Hand)': 14 values with a tie, S
   * = 54, variance 14 13 33 / 18 - 2 1 9 / 18, (S - 1) / sqrt(V) = 2.9058, p about 0.0018.
   */
  @Test
  void mannKendallMeetsTheExampleByHand() {
    Sample sample =
        Sample.of(
            12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7);
    MannKendall test = MannKendall.of(sample).get();
    assertThat(test.s()).isEqualTo(54);
    double variance = MannKendall.variance(14, Ties.groups(sample.values()));
    assertThat((test.s() - 1) / Math.sqrt(variance)).isCloseTo(2.9058, within(5e-5));
    assertThat(test.exact()).isTrue();
    MannKendall normal = MannKendall.approximated(54, 14, Ties.groups(sample.values()));
    assertThat(normal.pRising()).isCloseTo(0.0018, within(5e-5));
    // Counted, it is smaller still: the normal tail is too heavy for 14 values.
    assertThat(test.pRising()).isBetween(0.0010, normal.pRising());
  }

  /** Kendall's table of S for 5 values, from memory: S 10: 0.0083, 8: 0.042, 6: 0.117. */
  @Test
  void mannKendallMeetsKendallsTable() {
    assertThat(MannKendall.of(Sample.of(1, 2, 3, 4, 5)).get().pRising())
        .isCloseTo(0.0083, within(5e-5));
    assertThat(MannKendall.of(Sample.of(2, 1, 3, 4, 5)).get().pRising())
        .isCloseTo(0.042, within(5e-4));
    assertThat(MannKendall.of(Sample.of(2, 1, 3, 5, 4)).get().pRising())
        .isCloseTo(0.117, within(5e-4));
  }

  /** The definition itself: all orders of the values, counted one by one. */
  @Test
  void mannKendallCountsTiesAsTheDefinitionDoes(@Seed(1945) long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 20; round++) {
      double[] values = random.ints(7, 0, 4).asDoubleStream().toArray();
      if (Ties.groups(values).length == 1) {
        continue;
      }
      MannKendall test = MannKendall.of(Sample.of(values)).get();
      int[] counted = new int[3];
      everyOrder(
          values.clone(),
          0,
          order -> {
            int s = s(order);
            counted[0]++;
            counted[1] += s <= test.s() ? 1 : 0;
            counted[2] += s >= test.s() ? 1 : 0;
          });
      String which = "seed " + seed + " round " + round;
      assertThat(test.pFalling())
          .as(which)
          .isCloseTo((double) counted[1] / counted[0], within(1e-12));
      assertThat(test.pRising())
          .as(which)
          .isCloseTo((double) counted[2] / counted[0], within(1e-12));
    }
  }

  private static int s(double[] values) {
    int s = 0;
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < i; j++) {
        s += (int) Math.signum(values[i] - values[j]);
      }
    }
    return s;
  }

  private static void everyOrder(double[] values, int from, Consumer<double[]> each) {
    if (from == values.length) {
      each.accept(values);
      return;
    }
    for (int i = from; i < values.length; i++) {
      swap(values, from, i);
      everyOrder(values, from + 1, each);
      swap(values, from, i);
    }
  }

  private static void swap(double[] values, int i, int j) {
    double held = values[i];
    values[i] = values[j];
    values[j] = held;
  }

  @Test
  void approximationsMeetTheCountAtTheBorder(@Seed(60) long seed) {
    Random random = new Random(seed);
    double[] values = random.ints(61, 0, 30).asDoubleStream().toArray();
    for (int i = 0; i < values.length; i++) {
      values[i] += 0.1 * i;
    }
    double[] fewer = Arrays.copyOf(values, 60);
    MannKendall counted = MannKendall.of(Sample.of(fewer)).get();
    MannKendall approximated = MannKendall.approximated(counted.s(), 60, Ties.groups(fewer));
    assertThat(counted.exact()).isTrue();
    assertThat(MannKendall.of(Sample.of(values)).get().exact()).isFalse();
    assertThat(approximated.pRising()).isCloseTo(counted.pRising(), within(1e-3));
    assertThat(approximated.pFalling()).isCloseTo(counted.pFalling(), within(1e-3));

    Interval exact = TheilSen.ofOrder(Sample.of(fewer), 0.95).get().slopeInterval();
    Interval near = TheilSen.ofOrder(Sample.of(values), 0.95).get().slopeInterval();
    assertThat(near.low()).isCloseTo(exact.low(), within(0.03));
    assertThat(near.high()).isCloseTo(exact.high(), within(0.03));
  }

  @Test
  void aWildFiringDoesNotBendTheLine() {
    TheilSen line = TheilSen.ofOrder(Sample.of(1, 2, 3, 400, 5, 6, 7), 0.9).get();
    assertThat(line.slope()).isCloseTo(1, within(1e-12));
    assertThat(line.intercept()).isCloseTo(1, within(1e-12));
  }

  @Test
  void saysWhyThereIsNoTrend() {
    Sample four = Sample.of(1, 2, 3, 4);
    assertThat(MannKendall.of(four)).isEqualTo(new NotEnoughFirings<MannKendall>(4, 5));
    assertThat(TheilSen.ofOrder(four, 0.9)).isEqualTo(new NotEnoughFirings<TheilSen>(4, 5));
    Sample still = Sample.of(2, 2, 2, 2, 2);
    assertThat(MannKendall.of(still)).isEqualTo(new NoScatter<MannKendall>());
    assertThat(TheilSen.ofOrder(still, 0.9).get().slope()).isZero();
    assertThatThrownBy(() -> TheilSen.of(new double[] {1, 1, 2, 3, 4}, still, 0.9))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> TheilSen.of(new double[] {1, 2}, still, 0.9))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
