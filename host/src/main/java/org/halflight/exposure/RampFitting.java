package org.halflight.exposure;

import java.util.Optional;

/**
 * Finds the power law of a ramp by least squares of the light. For a given power the time is a
 * straight line in {@code E^(1/p)}, fitted with weights that turn distances in time into distances
 * in light; the power is then searched for.
 */
final class RampFitting {
  static final double LEAST_POWER = 0.3;
  static final double GREATEST_POWER = 6;

  /** Three unknowns want more readings than three. */
  static final int LEAST_READINGS = 6;

  /** The powers that are tried before the search between the best three of them. */
  private static final int TRIED = 58;

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final double[] seconds;
  private final double[] light;

  private RampFitting(double[] seconds, double[] light) {
    this.seconds = seconds;
    this.light = light;
  }

  private record Line(double darkSeconds, double lengthSeconds, double meanSquare) {}

  /**
   * The ramp through some readings.
   *
   * @param seconds when they were taken
   * @param light above 0
   * @param closing whether time runs backwards from the dark
   * @return empty where the readings are too few, or do not rise
   */
  static Optional<Ramp> of(double[] seconds, double[] light, boolean closing) {
    if (seconds.length < LEAST_READINGS) {
      return Optional.empty();
    }
    double[] forwards = seconds.clone();
    if (closing) {
      for (int i = 0; i < forwards.length; i++) {
        forwards[i] = -forwards[i];
      }
    }
    RampFitting fitting = new RampFitting(forwards, light);
    double power = fitting.bestPower();
    Line line = fitting.line(power);
    if (!(line.lengthSeconds() > 0) || !Double.isFinite(line.meanSquare())) {
      return Optional.empty();
    }
    return Optional.of(
        new Ramp(
            power,
            closing ? -line.darkSeconds() : line.darkSeconds(),
            line.lengthSeconds(),
            Math.sqrt(line.meanSquare()),
            seconds.length));
  }

  private double bestPower() {
    double step = (GREATEST_POWER - LEAST_POWER) / (TRIED - 1);
    double best = LEAST_POWER;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < TRIED; i++) {
      double tried = LEAST_POWER + i * step;
      double square = line(tried).meanSquare();
      if (square < least) {
        least = square;
        best = tried;
      }
    }
    double from = Math.max(LEAST_POWER, best - step);
    double to = Math.min(GREATEST_POWER, best + step);
    while (to - from > 1e-6) {
      double left = to - GOLDEN * (to - from);
      double right = from + GOLDEN * (to - from);
      if (line(left).meanSquare() < line(right).meanSquare()) {
        to = right;
      } else {
        from = left;
      }
    }
    return (from + to) / 2;
  }

  private Line line(double power) {
    double sum = 0;
    double meanX = 0;
    double meanT = 0;
    for (int i = 0; i < light.length; i++) {
      double weight = weight(i, power);
      sum += weight;
      meanX += weight * x(i, power);
      meanT += weight * seconds[i];
    }
    meanX /= sum;
    meanT /= sum;
    double xx = 0;
    double xt = 0;
    for (int i = 0; i < light.length; i++) {
      double weight = weight(i, power);
      double dx = x(i, power) - meanX;
      xx += weight * dx * dx;
      xt += weight * dx * (seconds[i] - meanT);
    }
    double length = xt / xx;
    double dark = meanT - length * meanX;
    if (!(length > 0)) {
      return new Line(dark, length, Double.POSITIVE_INFINITY);
    }
    double squares = 0;
    for (int i = 0; i < light.length; i++) {
      double way = Math.max(0, (seconds[i] - dark) / length);
      double miss = light[i] - Math.pow(way, power);
      squares += miss * miss;
    }
    return new Line(dark, length, squares / light.length);
  }

  private double x(int i, double power) {
    return Math.pow(light[i], 1 / power);
  }

  /** The square of the slope of the light over {@code E^(1/p)}, but for a constant factor. */
  private double weight(int i, double power) {
    return Math.pow(light[i], 2 - 2 / power);
  }
}
