package org.halflight.stats;

import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * How surely {@link BrownForsythe} finds that two samples scatter differently; no formula exists,
 * so normally distributed firings are drawn many times. The same seed always gives the same answer.
 *
 * @param trials how many pairs of samples are drawn; the standard error of a chance is at most half
 *     of 1 / sqrt(trials)
 * @param seed of the random numbers
 */
public record ScatterPower(int trials, long seed) {
  /** Good to about one in a hundred. */
  public static final ScatterPower USUAL = new ScatterPower(4000, 1974);

  public ScatterPower {
    if (trials < 1) {
      throw new IllegalArgumentException("no trials");
    }
  }

  /**
   * The chance to find a ratio of standard deviations.
   *
   * @param before firings in one sample, 3 or more
   * @param after firings in the other, 3 or more
   * @param ratio true standard deviation after over before, above zero
   * @param alpha chance to find one where there is none
   */
  public double of(int before, int after, double ratio, double alpha) {
    if (Math.min(before, after) < BrownForsythe.LEAST || !(ratio > 0)) {
      throw new IllegalArgumentException(
          "no test with " + before + " and " + after + " firings and a ratio of " + ratio);
    }
    Interval.checkLevel(alpha);
    double critical =
        new FDistribution(null, 1, before + after - 2).inverseCumulativeProbability(1 - alpha);
    SplittableRandom random = new SplittableRandom(seed);
    int found = 0;
    for (int trial = 0; trial < trials; trial++) {
      double[] first = normal(random, before, 1);
      double[] second = normal(random, after, ratio);
      if (BrownForsythe.ratio(List.of(first, second)) > critical) {
        found++;
      }
    }
    return (double) found / trials;
  }

  /**
   * How many firings in each sample find a ratio with a given chance; right to a firing or two,
   * since an odd number, where one distance from the median is always zero, does worse than the
   * even one below it.
   *
   * @param atMost where to stop looking, 3 or more
   * @return empty when even {@code atMost} firings do not
   */
  public OptionalInt firingsNeeded(double ratio, double alpha, double power, int atMost) {
    if (of(atMost, atMost, ratio, alpha) < power) {
      return OptionalInt.empty();
    }
    int few = BrownForsythe.LEAST - 1;
    int enough = atMost;
    while (enough - few > 1) {
      int middle = (few + enough) / 2;
      if (of(middle, middle, ratio, alpha) < power) {
        few = middle;
      } else {
        enough = middle;
      }
    }
    return OptionalInt.of(enough);
  }

  private static double[] normal(SplittableRandom random, int n, double sd) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = sd * random.nextGaussian();
    }
    return values;
  }
}
