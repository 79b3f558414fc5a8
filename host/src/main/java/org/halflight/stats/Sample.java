package org.halflight.stats;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Repeated firings at one speed, in the order in which they were fired; in stops or in seconds.
 *
 * <p>The first firing after rest and releases without a time do not belong in it: leaving them out
 * is up to the caller. Immutable.
 */
public final class Sample {
  /** Least firings for mean and median. */
  public static final int LEAST_FOR_MEAN = 1;

  /** Least firings for the standard deviation and the interval of the mean. */
  public static final int LEAST_FOR_SCATTER = 2;

  /**
   * Least firings for the robust spread: of two, the median deviation is half their distance and
   * resists nothing.
   */
  public static final int LEAST_FOR_ROBUST_SPREAD = 3;

  /**
   * Median absolute deviation to standard deviation of a normal distribution: 1 / 0.6745 (Hampel
   * 1974), cut to five digits as is customary.
   */
  private static final double MAD_TO_SD = 1.4826;

  private final double[] values;

  private Sample(double[] values) {
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a sample holds finite numbers, not " + value);
      }
    }
    this.values = values;
  }

  /** A sample of values in order of firing; may be empty. */
  public static Sample of(double... values) {
    return new Sample(values.clone());
  }

  /** A sample of values in order of firing; may be empty. */
  public static Sample of(Collection<Double> values) {
    return new Sample(values.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** How many firings. */
  public int n() {
    return values.length;
  }

  /** The first so many firings, or all where there are no more. */
  public Sample first(int firings) {
    return firings >= n() ? this : new Sample(Arrays.copyOf(values, firings));
  }

  /** The firings behind the first. */
  public Sample withoutFirst() {
    return new Sample(Arrays.copyOfRange(values, Math.min(1, n()), n()));
  }

  /** The same firings with something added to each. */
  public Sample plus(double more) {
    return new Sample(Arrays.stream(values).map(value -> value + more).toArray());
  }

  /** The firings of several samples, one after the other. */
  public static Sample joined(List<Sample> samples) {
    return new Sample(samples.stream().flatMapToDouble(s -> Arrays.stream(s.values)).toArray());
  }

  /** The values in order of firing; a copy. */
  public double[] values() {
    return values.clone();
  }

  /** The values from least to greatest; a copy. */
  public double[] sorted() {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted;
  }

  /** The arithmetic mean. */
  public Figure<Double> mean() {
    return n() < LEAST_FOR_MEAN ? few(LEAST_FOR_MEAN) : new Known<>(meanOf(values));
  }

  /** The middle value, or the mean of the two middle ones. */
  public Figure<Double> median() {
    return n() < LEAST_FOR_MEAN ? few(LEAST_FOR_MEAN) : new Known<>(medianOf(values));
  }

  /** The standard deviation with n - 1, by two passes. */
  public Figure<Double> sd() {
    return n() < LEAST_FOR_SCATTER ? few(LEAST_FOR_SCATTER) : new Known<>(sdOf(values));
  }

  /**
   * The median of the distances from the median, times 1.4826: an estimate of the standard
   * deviation that up to half of the firings cannot spoil. Zero when more than half of the firings
   * are alike.
   */
  public Figure<Double> robustSpread() {
    return n() < LEAST_FOR_ROBUST_SPREAD
        ? few(LEAST_FOR_ROBUST_SPREAD)
        : new Known<>(MAD_TO_SD * medianOf(distancesFrom(medianOf(values))));
  }

  /** Student's interval of the mean, two-sided: mean -+ t sd / sqrt(n) with n - 1 degrees. */
  public Figure<Interval> meanInterval(double level) {
    Interval.checkLevel(level);
    if (n() < LEAST_FOR_SCATTER) {
      return few(LEAST_FOR_SCATTER);
    }
    double t = Student.quantile((1 + level) / 2, n() - 1);
    double mean = meanOf(values);
    double half = t * sdOf(values) / Math.sqrt(n());
    return new Known<>(new Interval(mean - half, mean + half, level));
  }

  private <T> Figure<T> few(int least) {
    return new NotEnoughFirings<>(n(), least);
  }

  /** The distances of all values from a centre. */
  double[] distancesFrom(double centre) {
    return Arrays.stream(values).map(value -> Math.abs(value - centre)).toArray();
  }

  static double meanOf(double[] values) {
    double rough = Arrays.stream(values).sum() / values.length;
    // The second pass takes back what rounding left in the first (Chan, Golub, LeVeque 1983).
    double left = 0;
    for (double value : values) {
      left += value - rough;
    }
    return rough + left / values.length;
  }

  static double sdOf(double[] values) {
    return Math.sqrt(squaresAroundMean(values) / (values.length - 1));
  }

  static double squaresAroundMean(double[] values) {
    if (Arrays.stream(values).allMatch(value -> value == values[0])) {
      // Rounding of the mean must not make scatter where there is none.
      return 0;
    }
    double mean = meanOf(values);
    double squares = 0;
    double left = 0;
    for (double value : values) {
      double away = value - mean;
      squares += away * away;
      left += away;
    }
    return Math.max(0, squares - left * left / values.length);
  }

  static double medianOf(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }

  @Override
  public String toString() {
    return "Sample" + Arrays.toString(values);
  }
}
