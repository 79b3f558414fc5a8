package org.halflight.stats;

import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * How far the mean moved from one sample to another, in the unit of the samples.
 *
 * @param shift mean after less mean before
 * @param standardError of the shift
 * @param degreesOfFreedom need not be whole
 * @param interval of the shift, two-sided
 */
public record MeanShift(
    double shift, double standardError, double degreesOfFreedom, Interval interval) {
  /** Least firings in each sample. */
  public static final int LEAST = 2;

  /**
   * Without taking the scatters for equal (Welch 1947, degrees of freedom after Satterthwaite), of
   * firings that are independent of one another.
   */
  public static Figure<MeanShift> welch(Sample before, Sample after, double level) {
    Interval.checkLevel(level);
    if (few(before, after)) {
      return new NotEnoughFirings<>(Math.min(before.n(), after.n()), LEAST);
    }
    double varianceBefore = meanVariance(before);
    double varianceAfter = meanVariance(after);
    double sum = varianceBefore + varianceAfter;
    if (!(sum > 0)) {
      return new NoScatter<>();
    }
    double degrees =
        sum
            * sum
            / (varianceBefore * varianceBefore / (before.n() - 1)
                + varianceAfter * varianceAfter / (after.n() - 1));
    return new Known<>(of(before, after, Math.sqrt(sum), degrees, level));
  }

  /** Taking both scatters for the same and pooling them (Student). */
  public static Figure<MeanShift> pooled(Sample before, Sample after, double level) {
    Interval.checkLevel(level);
    if (few(before, after)) {
      return new NotEnoughFirings<>(Math.min(before.n(), after.n()), LEAST);
    }
    double degrees = before.n() + after.n() - 2;
    double variance =
        (Sample.squaresAroundMean(before.values()) + Sample.squaresAroundMean(after.values()))
            / degrees;
    if (!(variance > 0)) {
      return new NoScatter<>();
    }
    double standardError = Math.sqrt(variance * (1.0 / before.n() + 1.0 / after.n()));
    return new Known<>(of(before, after, standardError, degrees, level));
  }

  /**
   * A shift whose standard error was found elsewhere.
   *
   * @param standardError above zero
   * @param degreesOfFreedom above zero; may be infinite
   */
  public static MeanShift of(
      double shift, double standardError, double degreesOfFreedom, double level) {
    double half = standardError * Student.quantile((1 + level) / 2, degreesOfFreedom);
    return new MeanShift(
        shift, standardError, degreesOfFreedom, new Interval(shift - half, shift + half, level));
  }

  /** Shift over standard error. */
  public double t() {
    return shift / standardError;
  }

  /** The chance of a shift at least as large either way where there is none. */
  public double p() {
    return 2 * Student.below(-Math.abs(t()), degreesOfFreedom);
  }

  private static boolean few(Sample before, Sample after) {
    return before.n() < LEAST || after.n() < LEAST;
  }

  private static double meanVariance(Sample sample) {
    return Sample.squaresAroundMean(sample.values()) / (sample.n() - 1) / sample.n();
  }

  private static MeanShift of(
      Sample before, Sample after, double standardError, double degrees, double level) {
    return of(
        Sample.meanOf(after.values()) - Sample.meanOf(before.values()),
        standardError,
        degrees,
        level);
  }
}
