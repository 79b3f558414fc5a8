package org.halflight.stats;

import java.util.List;
import org.apache.commons.math3.distribution.FDistribution;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Whether samples scatter alike: analysis of variance of the distances from each sample's median
 * (Brown and Forsythe 1974; the median form of Levene's test). Bears firings that are not normally
 * distributed, and pays for it with little power where firings are few: see {@link ScatterPower}.
 *
 * @param w the F ratio
 * @param degreesBetween samples less one
 * @param degreesWithin firings less samples
 * @param p the chance of a ratio at least as large where all scatter alike
 */
public record BrownForsythe(double w, int degreesBetween, int degreesWithin, double p) {
  /** Least firings in each sample: of two, both distances are the same whatever they scatter. */
  public static final int LEAST = 3;

  /** Squares smaller than this against those they come from are rounding of equal distances. */
  private static final double ROUNDING = 1e-24;

  /**
   * @param samples two or more
   */
  public static Figure<BrownForsythe> of(List<Sample> samples) {
    if (samples.size() < 2) {
      throw new IllegalArgumentException("comparing takes two samples");
    }
    int fewest = samples.stream().mapToInt(Sample::n).min().getAsInt();
    if (fewest < LEAST) {
      return new NotEnoughFirings<>(fewest, LEAST);
    }
    int between = samples.size() - 1;
    int within = samples.stream().mapToInt(Sample::n).sum() - samples.size();
    double w = ratio(samples.stream().map(Sample::values).toList());
    if (!Double.isFinite(w)) {
      return new NoScatter<>();
    }
    double p = 1 - new FDistribution(null, between, within).cumulativeProbability(w);
    return new Known<>(new BrownForsythe(w, between, within, p));
  }

  /** The F ratio; not finite when within each sample all values are equally far from the median. */
  static double ratio(List<double[]> samples) {
    int all = 0;
    double grandSum = 0;
    double[] means = new double[samples.size()];
    double squaresWithin = 0;
    double squaresOfDistances = 0;
    for (int i = 0; i < means.length; i++) {
      double[] distances = samples.get(i).clone();
      double median = Sample.medianOf(distances);
      for (int j = 0; j < distances.length; j++) {
        distances[j] = Math.abs(distances[j] - median);
        squaresOfDistances += distances[j] * distances[j];
      }
      means[i] = Sample.meanOf(distances);
      squaresWithin += Sample.squaresAroundMean(distances);
      grandSum += means[i] * distances.length;
      all += distances.length;
    }
    if (squaresWithin <= ROUNDING * squaresOfDistances) {
      squaresWithin = 0;
    }
    double grandMean = grandSum / all;
    double squaresBetween = 0;
    for (int i = 0; i < means.length; i++) {
      double away = means[i] - grandMean;
      squaresBetween += samples.get(i).length * away * away;
    }
    return squaresBetween / (means.length - 1) / (squaresWithin / (all - means.length));
  }
}
