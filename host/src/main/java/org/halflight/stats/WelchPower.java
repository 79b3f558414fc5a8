package org.halflight.stats;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * How surely Welch's test finds a shift of the mean where both samples scatter alike. With few
 * firings it finds clearly less than the pooled test that {@link ShiftPower} computes, because it
 * does not know that they do; no formula exists, so normally distributed firings are drawn many
 * times. The same seed always gives the same answer.
 *
 * @param trials how many pairs of samples are drawn
 * @param seed of the random numbers
 */
public record WelchPower(int trials, long seed) {
  /** Good to about two in a hundred of the shift. */
  public static final WelchPower USUAL = new WelchPower(4000, 1947);

  public WelchPower {
    if (trials < 1) {
      throw new IllegalArgumentException("no trials");
    }
  }

  /**
   * The smallest shift, in standard deviations, that is found with a given chance.
   *
   * @param firings in each sample, 2 or more
   * @param alpha chance to find one where there is none
   * @param power the chance, above alpha and below 1
   */
  public double detectableShiftInSds(int firings, double alpha, double power) {
    if (firings < 2) {
      throw new IllegalArgumentException("comparing takes 2 firings each, not " + firings);
    }
    Interval.checkLevel(alpha);
    if (!(power > alpha && power < 1)) {
      throw new IllegalArgumentException("a power lies above alpha and below 1, not " + power);
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[] needed = new double[trials];
    for (int trial = 0; trial < trials; trial++) {
      Sample before = normal(random, firings);
      Sample after = normal(random, firings);
      MeanShift chance = MeanShift.welch(before, after, 1 - alpha).get();
      double critical = Student.quantile(1 - alpha / 2, chance.degreesOfFreedom());
      // The true shift that would just have been found with these draws.
      needed[trial] = critical * chance.standardError() - chance.shift();
    }
    Arrays.sort(needed);
    return needed[(int) Math.ceil(power * trials) - 1];
  }

  private static Sample normal(SplittableRandom random, int n) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = random.nextGaussian();
    }
    return Sample.of(values);
  }
}
