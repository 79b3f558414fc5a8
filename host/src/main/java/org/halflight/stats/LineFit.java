package org.halflight.stats;

import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * A straight line by least squares, with the covariance of its two numbers, as the calibration of a
 * thermometer in JCGM 100:2008 (GUM) annex H.3 has it.
 */
public final class LineFit {
  /** Least points: two fit any line and leave nothing to judge it by. */
  public static final int LEAST = 3;

  private final double[] x;
  private final double[] y;
  private final double meanX;
  private final double squaresX;
  private final double slope;
  private final double meanY;
  private final double residualSquares;

  private LineFit(double[] x, double[] y) {
    this.x = x;
    this.y = y;
    meanX = Sample.meanOf(x);
    meanY = Sample.meanOf(y);
    squaresX = Sample.squaresAroundMean(x);
    double products = 0;
    for (int i = 0; i < x.length; i++) {
      products += (x[i] - meanX) * (y[i] - meanY);
    }
    slope = products / squaresX;
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      double residual = residual(i);
      squares += residual * residual;
    }
    residualSquares = squares;
  }

  /**
   * Fits {@code y = intercept + slope x}.
   *
   * @param x three values or more, not all the same; taken as free of error
   * @param y one for each
   */
  public static LineFit of(double[] x, double[] y) {
    if (x.length != y.length || x.length < LEAST) {
      throw new IllegalArgumentException(
          "a line takes three points or more, not " + x.length + " with " + y.length);
    }
    Sample.of(x);
    Sample.of(y);
    LineFit fit = new LineFit(x.clone(), y.clone());
    if (!(fit.squaresX > 0)) {
      throw new IllegalArgumentException("all points of the line stand at " + x[0]);
    }
    return fit;
  }

  /** How many points. */
  public int n() {
    return x.length;
  }

  /** Units of y per unit of x. */
  public double slope() {
    return slope;
  }

  /** The line at zero. */
  public double intercept() {
    return meanY - slope * meanX;
  }

  /** The line at a place. */
  public double at(double place) {
    return meanY + slope * (place - meanX);
  }

  /** How far a point lies above the line. */
  public double residual(int i) {
    return (y[i] - meanY) - slope * (x[i] - meanX);
  }

  /** Points less two. */
  public int degreesOfFreedom() {
    return x.length - 2;
  }

  /** Sum of the squares of the residuals. */
  public double residualSquares() {
    return residualSquares;
  }

  /** Scatter of the points around the line. */
  public double residualSd() {
    return Math.sqrt(residualSquares / degreesOfFreedom());
  }

  /** Standard deviation of the slope. */
  public double slopeSd() {
    return residualSd() / Math.sqrt(squaresX);
  }

  /** Standard deviation of the intercept. */
  public double interceptSd() {
    return residualSd() * Math.sqrt(1.0 / x.length + meanX * meanX / squaresX);
  }

  /** Covariance of intercept and slope. */
  public double covariance() {
    return -meanX * residualSquares / degreesOfFreedom() / squaresX;
  }

  /** Correlation of intercept and slope. */
  public double correlation() {
    return -meanX / Math.sqrt(squaresX / x.length + meanX * meanX);
  }

  /** Standard uncertainty of the line at a place. */
  public double sdAt(double place) {
    double away = place - meanX;
    return residualSd() * Math.sqrt(1.0 / x.length + away * away / squaresX);
  }

  /** Where a further point at a place will lie, with a confidence. */
  public Interval prediction(double place, double level) {
    Interval.checkLevel(level);
    double half = t(level) * Math.hypot(residualSd(), sdAt(place));
    return new Interval(at(place) - half, at(place) + half, level);
  }

  /** The chance of a slope at least as far from a given one where that one is true. */
  public double slopeP(double from) {
    double away = Math.abs(slope - from);
    if (slopeSd() == 0) {
      return away == 0 ? 1 : 0;
    }
    return 2 * Student.below(-away / slopeSd(), degreesOfFreedom());
  }

  /** R squared. */
  public double determination() {
    double all = Sample.squaresAroundMean(y);
    return all > 0 ? 1 - residualSquares / all : 1;
  }

  /**
   * The chance of such a bend where the line is straight: scatter of the means at repeated places
   * against the scatter within them (Draper and Smith).
   */
  public Figure<Double> lackOfFitP() {
    Map<Double, double[]> sums = new TreeMap<>();
    for (int i = 0; i < x.length; i++) {
      double[] sum = sums.computeIfAbsent(x[i], place -> new double[2]);
      sum[0] += y[i] - meanY;
      sum[1]++;
    }
    int places = sums.size();
    if (places < LEAST || x.length <= places) {
      return new Figure.NotEnoughFirings<>(Math.min(places, x.length), x.length + 1);
    }
    double within = 0;
    for (int i = 0; i < x.length; i++) {
      double[] sum = Objects.requireNonNull(sums.get(x[i]));
      double away = y[i] - meanY - sum[0] / sum[1];
      within += away * away;
    }
    if (!(within > 0)) {
      return new Figure.NoScatter<>();
    }
    double bend = Math.max(0, residualSquares - within);
    double f = bend / (places - 2) / (within / (x.length - places));
    return new Figure.Known<>(
        1 - new FDistribution(null, places - 2, x.length - places).cumulativeProbability(f));
  }

  /**
   * The intercept where the slope is known beforehand: the mean of {@code y - slope x}.
   *
   * @param known the slope
   */
  public FixedSlope withSlope(double known) {
    double[] left = new double[x.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = y[i] - known * x[i];
    }
    double sd = Sample.sdOf(left);
    return new FixedSlope(Sample.meanOf(left), sd / Math.sqrt(left.length), sd, left.length - 1);
  }

  /**
   * A line with a slope that was given.
   *
   * @param intercept the line at zero
   * @param interceptSd of that
   * @param residualSd scatter of the points
   * @param degreesOfFreedom points less one
   */
  public record FixedSlope(
      double intercept, double interceptSd, double residualSd, int degreesOfFreedom) {}

  private double t(double level) {
    return Student.quantile((1 + level) / 2, degreesOfFreedom());
  }
}
